import type { Section } from '#core/step.ts';

/** The maker's sections by where they stand in the composed guide. */
export interface Regions {
  readonly title: Section | null;
  readonly before: readonly Section[];
  readonly parts: readonly Section[];
  readonly tools: readonly Section[];
  /** From the first step, or the headings over it, to the last step and what belongs to it. */
  readonly work: readonly Section[];
  readonly after: readonly Section[];
}

/** Every section goes to exactly one region, in its order; headings over nothing at all are dropped. */
export function regionsOf(sections: readonly Section[]): Regions {
  const title = sections.find((section) => section.role === 'title') ?? null;
  const running = sections.filter(
    (section, i) => section !== title && section.role !== 'parts' && section.role !== 'tools' && !isHollow(sections, i),
  );
  const [start, end] = workSpan(running);
  return {
    title,
    before: running.slice(0, start),
    parts: sections.filter((section) => section.role === 'parts'),
    tools: sections.filter((section) => section.role === 'tools'),
    work: withoutBareHeading(running.slice(start, end)),
    after: running.slice(end),
  };
}

function workSpan(sections: readonly Section[]): [start: number, end: number] {
  const first = sections.findIndex((section) => section.role === 'step');
  if (first < 0) return [sections.length, sections.length];
  const stepDepth = sections[first]?.depth ?? 0;
  let start = first;
  let depth = stepDepth;
  for (let i = first - 1; i >= 0; i--) {
    const above = sections[i]?.depth ?? 0;
    if (above >= depth) continue;
    start = i;
    depth = above;
  }
  let end = sections.findLastIndex((section) => section.role === 'step') + 1;
  while ((sections[end]?.depth ?? 0) > stepDepth) end++;
  return [start, end];
}

/** One bare heading over all steps says no more than the guide's own heading does. */
function withoutBareHeading(work: readonly Section[]): Section[] {
  const depth = work.find((section) => section.role === 'step')?.depth ?? 0;
  const over = work.filter((section) => section.depth < depth);
  return work.filter((section) => over.length !== 1 || section !== over[0] || hasContent(section));
}

function isHollow(sections: readonly Section[], at: number): boolean {
  const section = sections[at];
  if (!section || section.role === 'step' || hasContent(section)) return false;
  return (sections[at + 1]?.depth ?? 0) <= section.depth;
}

function hasContent(section: Section): boolean {
  return section.blocks.length > 0 || section.facts.length > 0;
}
