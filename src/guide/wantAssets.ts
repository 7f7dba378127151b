import type { AssetWant } from '#core/shot.ts';
import { everyBlock } from './everyBlock.ts';
import type { Guide } from './guide.ts';

/** The clean copies that the guide's pictures need, each once, in the order of first use. */
export function wantAssets(guide: Guide): AssetWant[] {
  const wants = new Map<string, AssetWant>();
  for (const block of everyBlock(guide)) {
    if (block.kind !== 'picture') continue;
    for (const width of block.widths) {
      const want = { shot: block.shot, width, format: block.format };
      wants.set(JSON.stringify([want.shot, want.width, want.format]), want);
    }
  }
  return [...wants.values()];
}
