import type { Asset } from '#core/shot.ts';
import { everyBlock } from '#guide/everyBlock.ts';
import type { BlockId, Guide, GuideBlock, PictureBlock, StepBlock } from '#guide/guide.ts';
import { isSafeUrl, relativeUrl } from '../shared/safeUrl.ts';
import { type WorkLine, workLine } from '../shared/workLine.ts';

/** What the parts of the page are drawn with. */
export interface Rendering {
  readonly guide: Guide;
  readonly steps: readonly StepBlock[];
  readonly line: WorkLine;
  /** True where a block is on the page and can be linked to. */
  has(id: BlockId): boolean;
  /** Clean copies of a picture, narrowest first. */
  assetsOf(picture: PictureBlock): readonly Asset[];
}

export function renderingOf(guide: Guide, assets: readonly Asset[]): Rendering {
  const blocks = [...everyBlock(guide)];
  const ids = new Set(blocks.flatMap(idsOf));
  const steps = blocks.filter((block) => block.kind === 'step');
  return {
    guide,
    steps,
    line: workLine(steps),
    has: (id) => ids.has(id),
    assetsOf: (picture) =>
      assets
        .filter(
          (asset) =>
            asset.shot === picture.shot && asset.format === picture.format && isSafeUrl(relativeUrl(asset.name)),
        )
        .sort((a, b) => a.width - b.width)
        .filter((asset, i, sorted) => asset.width !== sorted[i - 1]?.width),
  };
}

/** A block's own name and those of its rows. */
function idsOf(block: GuideBlock): BlockId[] {
  if (block.kind === 'parts' || block.kind === 'tools' || block.kind === 'wiring') {
    return [block.id, ...block.rows.map((row) => row.id)];
  }
  return [block.id];
}
