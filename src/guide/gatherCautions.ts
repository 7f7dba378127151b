import { signalWords } from '#core/step.ts';
import { withInner } from './everyBlock.ts';
import type { CautionListBlock, SectionBlock, StepBlock } from './guide.ts';

type Entry = CautionListBlock['cautions'][number];

/** The cautions of steps and sections, the gravest first; the same message in several steps comes once. */
export function gatherCautions(blocks: readonly (StepBlock | SectionBlock)[]): Entry[] {
  const entries = new Map<string, Entry>();
  for (const block of blocks) {
    const steps = block.kind === 'step' ? [{ block: block.id, number: block.number }] : [];
    for (const inner of withInner(block)) {
      if (inner.kind !== 'caution') continue;
      const key = JSON.stringify([inner.word, inner.message.toLowerCase()]);
      const before = entries.get(key);
      const word = inner.word;
      entries.set(key, {
        word,
        message: before?.message ?? inner.message,
        steps: [...(before?.steps ?? []), ...steps],
      });
    }
  }
  return signalWords.flatMap((word) => [...entries.values()].filter((entry) => entry.word === word));
}
