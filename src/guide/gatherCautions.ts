import { signalWords } from '#core/step.ts';
import { withInner } from './everyBlock.ts';
import type { CautionListBlock, SectionBlock, StepBlock } from './guide.ts';

type Entry = CautionListBlock['cautions'][number];

/** The cautions of steps and sections, the gravest first. */
export function gatherCautions(blocks: readonly (StepBlock | SectionBlock)[]): Entry[] {
  const entries = blocks.flatMap((block) => {
    const step = block.kind === 'step' ? { block: block.id, number: block.number } : null;
    return [...withInner(block)].flatMap((inner) =>
      inner.kind === 'caution' ? [{ word: inner.word, message: inner.message, step }] : [],
    );
  });
  return signalWords.flatMap((word) => entries.filter((entry) => entry.word === word));
}
