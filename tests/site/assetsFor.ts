import type { Asset } from '#core/shot.ts';
import { everyBlock } from '#guide/everyBlock.ts';
import type { Guide } from '#guide/guide.ts';
import { wantAssets } from '#guide/wantAssets.ts';

/** The assets that a guide wants, as if every one had been made, in the proportions of its original. */
export function assetsFor(guide: Guide): Asset[] {
  const originals = new Map(
    [...everyBlock(guide)].flatMap((block) => (block.kind === 'picture' ? [[block.shot, block] as const] : [])),
  );
  return wantAssets(guide).map((want) => {
    const original = originals.get(want.shot);
    const height = Math.round((want.width * (original?.height ?? 3)) / (original?.width ?? 4));
    const name = `pictures/${want.shot.replace(/\W/g, '-')}-${want.width}.${want.format === 'jpeg' ? 'jpg' : 'png'}`;
    return { ...want, name, height, bytes: want.width * height };
  });
}
