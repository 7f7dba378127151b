import type { Erratum } from '#core/erratum.ts';
import type { Finding } from '#core/finding.ts';
import type { StepId } from '#core/step.ts';
import type { BlockNames } from './blockNames.ts';
import type { ErratumBlock, NoticesBlock } from './guide.ts';
import { markOf, type StepMarks } from './stepMarks.ts';

/** What is known to be wrong and not put right in any edition yet, with the step that it is about. */
export function composeErrata(
  errata: readonly Erratum[],
  marks: StepMarks,
  headings: ReadonlyMap<StepId, string>,
  names: BlockNames,
): ErratumBlock[] {
  return errata
    .filter((erratum) => erratum.fixed === null || erratum.fixed.trim() === '')
    .map(({ at, wrong, right, editions, by, step, place }) => ({
      kind: 'erratum',
      id: names.within('errata', 'erratum', [at, wrong]),
      places: [place],
      at: at?.slice(0, 10) ?? null,
      wrong,
      right,
      editions,
      by,
      step: step === null ? null : markOf(step, marks, headings),
    }));
}

/** Null where nothing halts a builder and nothing is known to be wrong. */
export function composeNotices(
  findings: readonly Finding[],
  errata: readonly ErratumBlock[],
  marks: StepMarks,
): NoticesBlock | null {
  const halts = findings
    .filter(({ weight, audience }) => weight === 'halts' && audience === 'builder')
    .map(({ message, subjects }) => ({
      message,
      steps: [...marks].flatMap(([id, mark]) => (subjects.includes(`step:${id}`) ? [mark] : [])),
    }));
  if (halts.length === 0 && errata.length === 0) return null;
  return { kind: 'notices', id: 'notices', places: [], halts, errata };
}
