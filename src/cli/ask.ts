import { createInterface } from 'node:readline/promises';

/** Questions to the maker at the terminal. */
export interface Questions {
  /** Asks until one of the keys is typed; the end of input counts as the last of them. */
  ask(question: string, keys: readonly [string, ...string[]]): Promise<string>;
  close(): void;
}

/** True where somebody can be asked: input and output are a terminal. */
export function canAsk(): boolean {
  return process.stdin.isTTY === true && process.stdout.isTTY === true;
}

/** Asks on `output` and reads answers from `input`. */
export function openQuestions(
  input: NodeJS.ReadableStream = process.stdin,
  output: NodeJS.WritableStream = process.stdout,
): Questions {
  const lines = createInterface({ input });
  const answers = lines[Symbol.asyncIterator]();
  return {
    async ask(question, keys) {
      for (;;) {
        output.write(question);
        const { value, done } = (await answers.next()) as IteratorResult<string, undefined>;
        if (done === true) return keys.at(-1) ?? keys[0];
        const key = keys.find((one) => one === value.trim().toLowerCase().slice(0, 1));
        if (key !== undefined) return key;
      }
    },
    close: () => {
      lines.close();
    },
  };
}
