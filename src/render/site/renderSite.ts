import type { Asset } from '#core/shot.ts';
import type { CodeFileBlock, Guide, PageBlock } from '#guide/guide.ts';
import { slugOf } from '#notation/names.ts';
import { element, formatDocument, type Html, scriptElement } from '../shared/html.ts';
import { renderAlertStock } from '../shared/renderCaution.ts';
import { stylesheet } from '../shared/stylesheet.ts';
import { gatherStyle } from './gatherStyle.ts';
import { offlineWorker } from './offlineWorker.ts';
import { formatCsv } from './reader/csv.ts';
import gatherScript from './reader/gather.ts?script';
import guideScript from './reader/guide.ts?script';
import { shoppingFor } from './reader/shopping.ts';
import { shoppingRows } from './reader/shoppingWords.ts';
import { renderFooter, renderLicences } from './renderClosing.ts';
import { codePage, codePath, renderCode, renderListings } from './renderCode.ts';
import { renderFiles } from './renderFiles.ts';
import { gatherFile, gatherPage, renderGather } from './renderGather.ts';
import { renderHead, type SidePage } from './renderHead.ts';
import { type Rendering, renderingOf } from './rendering.ts';
import { renderNotices } from './renderNotices.ts';
import { renderCautionList, renderHeader, renderPromise } from './renderOpening.ts';
import { renderParts } from './renderParts.ts';
import { renderProse } from './renderProse.ts';
import { renderTools } from './renderTools.ts';
import { renderTroubles } from './renderTroubles.ts';
import { renderWiring } from './renderWiring.ts';
import { renderWork } from './renderWork.ts';
import { reportAddress } from './reportAddress.ts';
import { wantedOf } from './wantedOf.ts';

/**
 * The guide as a folder that any host, or none, can show: one page, its style, and the code to take away.
 * Addresses are relative and nothing is fetched from elsewhere. An asset's name is its path in that folder.
 */
export function renderSite(guide: Guide, assets: readonly Asset[]): { path: string; text: string }[] {
  const rendering = renderingOf(guide, assets);
  const code = guide.blocks.filter((block) => block.kind === 'codeFile');
  const pages = [
    { path: 'index.html', text: formatDocument(renderDocument(rendering, null, renderPage(rendering))) },
    ...(code.length > 0
      ? [
          {
            path: codePage,
            text: formatDocument(renderDocument(rendering, { title: 'Code' }, renderCodePage(code, rendering))),
          },
        ]
      : []),
    ...gatherFiles(rendering),
    { path: 'style.css', text: stylesheet },
    { path: 'guide.js', text: guideScript },
  ];
  return [
    ...pages,
    { path: 'offline.js', text: offlineWorker(pages, assets) },
    ...code.map((file) => ({ path: codePath(file), text: file.text })),
  ];
}

/** The sheet for gathering parts with what belongs to it, where there are parts. */
function gatherFiles(rendering: Rendering): { path: string; text: string }[] {
  const block = rendering.guide.blocks.find((one) => one.kind === 'parts');
  if (block === undefined || block.rows.length === 0) return [];
  const wanted = wantedOf(block.rows);
  const own = [element('link', { rel: 'stylesheet', href: 'parts.css' }), scriptElement('gather.js')];
  const page = renderDocument(rendering, { title: 'Parts', own }, renderGather(block, wanted, rendering));
  return [
    { path: gatherPage, text: formatDocument(page) },
    { path: 'parts.css', text: gatherStyle },
    { path: 'gather.js', text: gatherScript },
    { path: gatherFile, text: formatCsv(shoppingRows(shoppingFor(wanted, 1, new Set()))) },
  ];
}

/** One page of the site; `page` names one that is not the guide itself. */
function renderDocument(rendering: Rendering, page: SidePage | null, body: Html): Html {
  const { guide } = rendering;
  return element(
    'html',
    {
      lang: /^[a-z]{2,8}(-[a-z0-9]{1,8})*$/i.test(guide.language) ? guide.language : 'en',
      dir: isRightToLeft(guide.language) ? 'rtl' : null,
      'data-guide': slugOf(guide.title),
    },
    renderHead(rendering, page),
    body,
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
    renderAlertStock(),
    renderHeader(cover, summary, rendering),
    element('main', {}, renderPromise(summary, rendering), ...blocks.map((block) => renderPageBlock(block, rendering))),
    renderFooter(credits, revision, reportAddress(rendering.guide, null)),
  );
}

function renderCodePage(code: readonly CodeFileBlock[], { guide }: Rendering): Html {
  return element(
    'body',
    {},
    element(
      'header',
      { class: 'opening aside' },
      element('h1', {}, 'Code'),
      element('p', { class: 'purpose' }, 'For ', element('a', { href: 'index.html' }, guide.title), '.'),
    ),
    element('main', {}, ...renderListings(code)),
  );
}

/** Scripts that are written from right to left, by the languages that use them (Unicode CLDR, layout orientation). */
const rightToLeft = new Set([
  'ar',
  'arc',
  'ckb',
  'dv',
  'fa',
  'he',
  'iw',
  'ks',
  'ku',
  'nqo',
  'ps',
  'sd',
  'ug',
  'ur',
  'yi',
]);

function isRightToLeft(language: string): boolean {
  const [tag = '', ...rest] = language.toLowerCase().split('-');
  if (rest.some((part) => part === 'latn' || part === 'cyrl')) return false;
  return rightToLeft.has(tag) || rest.some((part) => part === 'arab' || part === 'hebr');
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
    case 'notices':
      return renderNotices(block);
    case 'troubles':
      return renderTroubles(block);
    case 'files':
      return renderFiles(block);
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
