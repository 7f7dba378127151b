import { dataElement, element, type Html, scriptElement } from '../shared/html.ts';
import { relativeUrl } from '../shared/safeUrl.ts';
import type { Rendering } from './rendering.ts';
import { structuredData } from './structuredData.ts';

/** A page of the site beside the guide itself; `own` is what it has beyond the common style. */
export interface SidePage {
  readonly title: string;
  readonly own?: readonly Html[];
}

/** What a page tells browsers, search engines, and those who show a card of it elsewhere (Open Graph). */
export function renderHead(rendering: Rendering, page: SidePage | null): Html {
  const { guide } = rendering;
  if (page !== null) {
    return element('head', {}, ...basics(`${page.title} – ${guide.title}`), ...(page.own ?? []));
  }
  const image = cardPicture(rendering);
  return element(
    'head',
    {},
    ...basics(guide.title),
    guide.summary !== null && element('meta', { name: 'description', content: guide.summary }),
    guide.site !== null && element('link', { rel: 'canonical', href: guide.site }),
    property('og:type', 'article'),
    property('og:title', guide.title),
    guide.summary !== null && property('og:description', guide.summary),
    guide.site !== null && property('og:url', guide.site),
    image !== null && property('og:image', image.url),
    image !== null && property('og:image:alt', image.alt),
    image !== null && property('og:image:width', `${image.width}`),
    image !== null && property('og:image:height', `${image.height}`),
    scriptElement('guide.js'),
    dataElement('application/ld+json', structuredData(rendering)),
  );
}

function basics(title: string): Html[] {
  return [
    element('meta', { charset: 'utf-8' }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('meta', { name: 'color-scheme', content: 'light dark' }),
    element('title', {}, title),
    element('link', { rel: 'stylesheet', href: 'style.css' }),
  ];
}

function property(name: string, content: string): Html {
  return element('meta', { property: name, content });
}

/** Cards need a whole address, so there is a picture only where the maker says where the site stands. */
function cardPicture({ guide, assetsOf }: Rendering) {
  const cover = guide.blocks.find((block) => block.kind === 'cover')?.picture;
  if (guide.site === null || cover?.kind !== 'picture') return null;
  const asset = assetsOf(cover).findLast(({ width }) => width <= 1200) ?? assetsOf(cover)[0];
  if (asset === undefined) return null;
  return { url: `${guide.site}${relativeUrl(asset.name)}`, alt: cover.alt, width: asset.width, height: asset.height };
}
