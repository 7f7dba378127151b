import type { Build } from '#core/build.ts';
import type { StepId } from '#core/step.ts';

/** The guide's prose after a step, or from that step on. Facts are not prose. */
export function wordsAfter({ instructions: { sections } }: Build, step: StepId, own: 'included' | 'left out'): string {
  const at = sections.findIndex(({ id }) => id === step);
  return sections
    .slice(own === 'included' ? at : at + 1)
    .map(({ id, heading, blocks }) =>
      [id === step ? '' : heading, ...blocks.map(({ place }) => place.quote)].join('\n'),
    )
    .join('\n');
}
