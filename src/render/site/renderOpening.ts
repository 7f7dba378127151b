import type { CautionListBlock, CoverBlock, GuideBlock, SummaryBlock } from '#guide/guide.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { renderCautions } from '../shared/renderCaution.ts';
import type { Rendering } from './rendering.ts';
import { renderMissingPicture, renderPicture } from './renderPicture.ts';
import { renderSection } from './renderSection.ts';
import { renderStepMarks } from './renderStepMarks.ts';
import { renderWords } from './renderWords.ts';

/** The name of the thing, what it is for, and the thing itself. */
export function renderHeader(cover: CoverBlock | null, summary: SummaryBlock | null, rendering: Rendering): Html {
  const purpose = summary?.sentences.find((sentence) => sentence.about === 'purpose');
  return element(
    'header',
    { class: 'opening' },
    element('h1', {}, rendering.guide.title),
    purpose ? element('p', { class: 'purpose' }, ...renderWords(purpose.words, rendering)) : null,
    cover && renderCover(cover, rendering),
  );
}

function renderCover(cover: CoverBlock, rendering: Rendering): Html {
  return cover.picture.kind === 'picture'
    ? renderPicture(cover.picture, rendering, 'cover')
    : renderMissingPicture(cover.picture);
}

/** Skills, time, cost and state as running sentences, then the way through the page as one more. */
export function renderPromise(summary: SummaryBlock | null, rendering: Rendering): Html {
  const sentences = summary?.sentences.filter((sentence) => sentence.about !== 'purpose') ?? [];
  return element(
    'div',
    { class: 'promise' },
    sentences.length > 0 &&
      element(
        'p',
        {},
        ...sentences.flatMap((sentence, i): Child[] => [i > 0 && ' ', ...renderWords(sentence.words, rendering)]),
      ),
    renderWay(rendering),
  );
}

/** The contents of the page, told as what a builder does with them. */
function renderWay({ guide, steps }: Rendering): Html {
  const verbs = guide.blocks.flatMap((block) => {
    const verb = wayTo(block, steps.length);
    return verb ? [element('a', { href: `#${verb[1]}` }, verb[0])] : [];
  });
  const unique = verbs.filter((verb, i) => verb.markup !== verbs[i - 1]?.markup);
  return element(
    'nav',
    { class: 'way', 'aria-label': 'On this page' },
    element(
      'p',
      {},
      ...unique.flatMap((verb, i): Child[] => [i === 0 ? '' : i === unique.length - 1 ? ' and ' : ', ', verb]),
      '.',
    ),
  );
}

function wayTo(block: GuideBlock, steps: number): [words: string, id: string] | null {
  switch (block.kind) {
    case 'notices':
      return ['Know what is wrong with it', block.id];
    case 'cautionList':
      return [block.cautions.length === 1 ? 'Hear one caution' : `Hear ${block.cautions.length} cautions`, block.id];
    case 'parts':
      return [`gather ${counted(block.rows.length, 'part')}`, block.id];
    case 'tools':
      return [`lay out ${counted(block.rows.length, 'tool')}`, block.id];
    case 'wiring':
      return [`look over ${counted(block.rows.length, 'connection')}`, block.id];
    case 'work':
      return [`do ${counted(steps, 'step')}`, 'steps'];
    case 'codeFile':
      return ['take the code', 'code'];
    case 'troubles':
      return ['look up what went wrong', block.id];
    case 'files':
      return ['take the files', block.id];
    case 'licences':
      return ['read what you may do with it', block.id];
    default:
      return null;
  }
}

function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}

/** All cautions of the guide together, each leading to its steps. */
export function renderCautionList(block: CautionListBlock): Html {
  const told = block.cautions.map(({ word, message, steps }) => ({
    word,
    message,
    after: steps.length === 0 ? [] : [' (', ...renderStepMarks(steps), ')'],
  }));
  return renderSection({ id: block.id, heading: 'Cautions' }, ...renderCautions(told));
}
