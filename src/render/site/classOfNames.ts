/** Longer names of parts and pins may break, or two of them would push a table off a phone. */
const longestWhole = 12;

/** The class of a cell that holds names of parts or pins. */
export function classOfNames(names: readonly string[]): string {
  return names.some((name) => name.length > longestWhole) ? 'refs long' : 'refs';
}
