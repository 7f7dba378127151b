import type { Ref } from '#core/part.ts';
import table from './refClasses.json';

export type RefClass = Exclude<keyof typeof table, 'source'>;

/** What kind of part the letters of a reference designator stand for; null where they have no one meaning. */
export function refClass(ref: Ref): RefClass | null {
  const letters = /^([A-Za-z]{1,4})\d/u.exec(ref)?.[1]?.toUpperCase();
  return letters === undefined ? null : (classes.get(letters) ?? null);
}

const { source: _, ...letters } = table;
const classes: ReadonlyMap<string, RefClass> = new Map(
  Object.entries(letters).flatMap(([name, all]) => all.map((prefix) => [prefix, name as RefClass] as const)),
);
