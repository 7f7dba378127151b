import type { Asset } from '#core/shot.ts';
import type { Guide, PageBlock } from '#guide/guide.ts';
import { element, formatDocument, type Html } from '../shared/html.ts';
import { stylesheet } from '../shared/stylesheet.ts';
import { renderFooter, renderLicences } from './renderClosing.ts';
import { codePath, renderCode } from './renderCode.ts';
import { type Rendering, renderingOf } from './rendering.ts';
import { renderCautionList, renderHeader, renderPromise } from './renderOpening.ts';
import { renderParts } from './renderParts.ts';
import { renderProse } from './renderProse.ts';
import { renderTools } from './renderTools.ts';
import { renderWiring } from './renderWiring.ts';
import { renderWork } from './renderWork.ts';

/**
 * The guide as a folder that any host, or none, can show: one page, its style, and the code to take away.
 * Addresses are relative and nothing is fetched from elsewhere. An asset's name is its path in that folder.
 */
export function renderSite(guide: Guide, assets: readonly Asset[]): { path: string; text: string }[] {
  const rendering = renderingOf(guide, assets);
  const code = guide.blocks.filter((block) => block.kind === 'codeFile');
  return [
    { path: 'index.html', text: formatDocument(renderDocument(rendering)) },
    { path: 'style.css', text: stylesheet },
    ...code.map((file) => ({ path: codePath(file), text: file.text })),
  ];
}

function renderDocument(rendering: Rendering): Html {
  const { guide } = rendering;
  return element(
    'html',
    { lang: /^[a-z]{2,8}(-[a-z0-9]{1,8})*$/i.test(guide.language) ? guide.language : 'en' },
    element(
      'head',
      {},
      element('meta', { charset: 'utf-8' }),
      element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      element('meta', { name: 'color-scheme', content: 'light dark' }),
      element('title', {}, guide.title),
      element('link', { rel: 'stylesheet', href: 'style.css' }),
    ),
    renderPage(rendering),
  );
}

function renderPage(rendering: Rendering): Html {
  const { blocks } = rendering.guide;
  const cover = blocks.find((block) => block.kind === 'cover') ?? null;
  const summary = blocks.find((block) => block.kind === 'summary') ?? null;
  const credits = blocks.find((block) => block.kind === 'credits') ?? null;
  const revision = blocks.find((block) => block.kind === 'revision') ?? null;
  return element(
    'body',
    {},
    rendering.steps.length > 0 && element('a', { class: 'skip', href: '#steps' }, 'Go to the steps'),
    renderHeader(cover, summary, rendering),
    element('main', {}, renderPromise(summary, rendering), ...blocks.map((block) => renderPageBlock(block, rendering))),
    renderFooter(credits, revision),
  );
}

/** Header and footer hold what is null here. */
function renderPageBlock(block: PageBlock, rendering: Rendering): Html | null {
  switch (block.kind) {
    case 'cover':
    case 'summary':
    case 'credits':
    case 'revision':
      return null;
    case 'cautionList':
      return renderCautionList(block);
    case 'section':
      return renderProse(block, rendering);
    case 'parts':
      return renderParts(block, rendering);
    case 'tools':
      return renderTools(block, rendering);
    case 'wiring':
      return renderWiring(block);
    case 'work':
      return renderWork(block, rendering);
    case 'codeFile':
      return renderCodeOnce(block, rendering);
    case 'licences':
      return renderLicences(block);
  }
}

/** All files stand together, where the first of them comes. */
function renderCodeOnce(block: PageBlock, { guide }: Rendering): Html | null {
  const files = guide.blocks.filter((candidate) => candidate.kind === 'codeFile');
  return block === files[0] ? renderCode(files) : null;
}
