import type { Build } from '#core/build.ts';
import type { Place } from '#core/place.ts';
import type { StepId } from '#core/step.ts';

/** A step by its heading, in quotes. */
export function stepName(build: Build, id: StepId): string {
  const section = build.instructions.sections.find((one) => one.id === id);
  return `‘${section?.heading ?? id}’`;
}

/** A list as it is read aloud; more than `most` are counted. */
export function listed(items: readonly string[], most = 4): string {
  const shown = items.length > most ? [...items.slice(0, most - 1), `${items.length - most + 1} more`] : [...items];
  const last = shown.pop();
  return shown.length === 0 ? (last ?? '') : `${shown.join(', ')} and ${last}`;
}

/** A count and its unit; of pieces the count alone. */
export function counted(n: number, unit = 'pcs'): string {
  return unit === 'pcs' ? `${n}` : `${n} ${unit}`;
}

/** A word with its number: '1 wire', '3 wires'. */
export function numbered(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}

/** The files of the parts lists, as places for findings about what they lack. */
export function partsFiles(build: Build): Place[] {
  return build.partsLists.map(({ file }): Place => ({ kind: 'file', file }));
}

/** The name of the file that lists the parts. */
export function partsFileName(build: Build): string {
  return build.partsLists[0]?.file ?? 'the parts list';
}
