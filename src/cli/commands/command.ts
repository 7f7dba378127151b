/** One command of the program. */
export interface Command {
  readonly name: string;
  /** What comes after the name, such as `DIR [--json]`. */
  readonly usage: string;
  /** One line for the overview. */
  readonly title: string;
  /** What it does, writes and leaves alone. */
  readonly about: string;
  readonly options: readonly { readonly flag: string; readonly meaning: string }[];
  readonly examples: readonly string[];
  /** Returns the exit status. */
  run(words: readonly string[]): Promise<0 | 1 | 2>;
}

/** The option that every command with data has. */
export const jsonOption = {
  flag: '--json',
  meaning: 'one JSON document on standard output instead of text (see docs/json.md)',
};
