import type { Guide, GuideBlock } from './guide.ts';

/** All blocks of a guide in reading order, each before those inside it. */
export function* everyBlock(guide: Guide): Generator<GuideBlock> {
  for (const block of guide.blocks) yield* withInner(block);
}

/** A block and all inside it, each before those inside it. */
export function* withInner(block: GuideBlock): Generator<GuideBlock> {
  yield block;
  for (const inner of innerBlocks(block)) yield* withInner(inner);
}

/** The blocks directly inside a block, in reading order. */
function innerBlocks(block: GuideBlock): readonly GuideBlock[] {
  switch (block.kind) {
    case 'cover':
      return [block.picture];
    case 'section':
    case 'parts':
    case 'tools':
    case 'quote':
      return block.body;
    case 'work':
      return block.blocks;
    case 'step':
      return [
        ...block.cautions,
        ...block.beforePower,
        ...block.body,
        ...block.checks,
        ...block.mistakes,
        ...block.errata,
      ];
    case 'notices':
      return block.errata;
    case 'list':
      return block.items.flatMap((item) => item.body);
    case 'summary':
    case 'cautionList':
    case 'wiring':
    case 'codeFile':
    case 'licences':
    case 'credits':
    case 'revision':
    case 'paragraph':
    case 'heading':
    case 'listing':
    case 'table':
    case 'rule':
    case 'picture':
    case 'missingPicture':
    case 'caution':
    case 'mistake':
    case 'measure':
    case 'expect':
    case 'erratum':
    case 'troubles':
    case 'files':
      return [];
  }
}
