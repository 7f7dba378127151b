import { Failure, type FailureCode } from '#core/failure.ts';
import { codeOf } from './fileSystem.ts';

interface Explanation {
  readonly code: FailureCode;
  readonly what: string;
  readonly hint: string;
}

const explanations: Readonly<Record<string, Explanation>> = {
  ENOENT: { code: 'not-found', what: 'is not there', hint: 'Check the spelling, capitals included.' },
  ENOTDIR: {
    code: 'not-found',
    what: 'is not there: part of its path is a file, not a folder',
    hint: 'Check the path.',
  },
  EACCES: { code: 'not-allowed', what: 'is closed to you', hint: 'Change its permissions, or run as its owner.' },
  EPERM: { code: 'not-allowed', what: 'is closed to you', hint: 'Change its permissions, or run as its owner.' },
  EROFS: {
    code: 'not-allowed',
    what: 'lies on a read-only disk',
    hint: 'Copy the folder to a disk that takes writes.',
  },
  ENOSPC: { code: 'disk-full', what: 'does not fit: the disk is full', hint: 'Free some space, then run this again.' },
  EDQUOT: {
    code: 'disk-full',
    what: 'does not fit: your share of the disk is used up',
    hint: 'Free some space, then run this again.',
  },
  ELOOP: { code: 'not-found', what: 'is a link that leads round in a circle', hint: 'Remove or mend the link.' },
  ENAMETOOLONG: { code: 'not-allowed', what: 'has a name or path that is too long', hint: 'Shorten the names.' },
};

/** The failure that a system error means, for the file or folder `path` while it was being read or written. */
export function failureOf(error: unknown, path: string, doing: 'read' | 'write'): Failure {
  if (error instanceof Failure) return error;
  const code = codeOf(error);
  if (code === undefined) throw error;
  const known = explanations[code];
  if (known) return new Failure(known.code, `'${path}' ${known.what}.`, known.hint, { cause: error });
  return new Failure(
    doing === 'read' ? 'read-failed' : 'write-failed',
    `'${path}' could not be ${doing === 'read' ? 'read' : 'written'}: the system says ${code}.`,
    'Check the disk and its connection, then run this again. Nothing of yours was changed.',
    { cause: error },
  );
}
