import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { Instructions, Section } from '#core/step.ts';

/**
 * Where in the guide something is read: the section, and how far down in it. What a step's facts say stands at its
 * head; `Infinity` is somewhere in the section.
 */
export interface ReadingPlace {
  readonly section: number;
  readonly at: number;
}

/** Where a place of the guide is read; the facts of a step come before its text. Null for other files. */
export function readingPlaceOf(build: Build, place: TextPlace): ReadingPlace | null {
  const index = startsOf(build.instructions)
    .get(place.file)
    ?.findLast(({ start }) => start <= place.span[0])?.index;
  const section = build.instructions.sections[index ?? -1];
  if (index === undefined || section === undefined || !isIn(section, place)) return null;
  const block = section.blocks.find(({ place: own }) => within(own, place));
  return { section: index, at: block?.place.span[0] ?? -1 };
}

/** Where the sections of each file begin, in the order of the file. */
const startsOf = rememberFor(({ sections }: Instructions) => {
  const starts = new Map<string, { readonly start: number; readonly index: number }[]>();
  for (const [index, { file, place }] of sections.entries()) {
    const here = starts.get(file);
    if (here === undefined) starts.set(file, [{ start: place.span[0], index }]);
    else here.push({ start: place.span[0], index });
  }
  return starts;
});

/** Whether a reader comes to `first` no later than to `then`; within one block both are read together. */
export function isReadBefore(first: ReadingPlace, then: ReadingPlace): boolean {
  return first.section === then.section ? first.at <= then.at : first.section < then.section;
}

function isIn(section: Section, place: TextPlace): boolean {
  return (
    section.file === place.file &&
    (within(section.place, place) ||
      section.facts.some((fact) => within(fact.place, place)) ||
      section.blocks.some((block) => within(block.place, place)))
  );
}

/** Whether a place lies in another of the same file. */
export function within(outer: TextPlace, inner: TextPlace): boolean {
  return outer.file === inner.file && outer.span[0] <= inner.span[0] && inner.span[1] <= outer.span[1];
}
