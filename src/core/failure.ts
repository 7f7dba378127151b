/** Kinds of trouble with the world outside, as distinct from mistakes in the maker's files. */
export type FailureCode =
  | 'not-found'
  | 'not-a-folder'
  | 'not-allowed'
  | 'disk-full'
  | 'file-changed'
  | 'cannot-encode'
  | 'locked'
  | 'bad-request'
  | 'cancelled'
  | 'output-not-ours'
  | 'broken-job'
  | 'read-failed'
  | 'write-failed';

/** The world would not do as asked. Only the shells catch it; `hint` says what to do. */
export class Failure extends Error {
  override readonly name = 'Failure';
  readonly code: FailureCode;
  readonly hint: string;

  constructor(code: FailureCode, message: string, hint: string, options?: { cause?: unknown }) {
    super(message, options);
    this.code = code;
    this.hint = hint;
  }
}

/** Stops at a mistake of ours, loudly. */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`Broken assumption: ${message}`);
}
