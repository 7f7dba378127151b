import { type ParseArgsConfig, parseArgs } from 'node:util';

/** The words of a command line do not fit the command. */
export class UsageMistake extends Error {
  override readonly name = 'UsageMistake';
}

type Options = NonNullable<ParseArgsConfig['options']>;

/** Splits a command's words into options and places; throws `UsageMistake` for unknown or incomplete options. */
export function readArguments<T extends Options>(words: readonly string[], options: T) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    throw new UsageMistake(`${message.split('. ')[0]}.`, { cause: error });
  }
}

/** The one folder or file that a command needs. */
export function onePlace(places: readonly string[], what: string): string {
  const [place, ...more] = places;
  if (place === undefined) throw new UsageMistake(`Expected ${what}; none was given.`);
  if (more.length > 0) throw new UsageMistake(`Expected only ${what}; found ${places.length}: ${places.join(', ')}.`);
  return place;
}
