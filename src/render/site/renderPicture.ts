import type { Asset } from '#core/shot.ts';
import type { MissingPictureBlock, PictureBlock } from '#guide/guide.ts';
import { element, type Html } from '../shared/html.ts';
import { relativeUrl } from '../shared/safeUrl.ts';
import { renderCallouts, renderCalloutWords } from './renderCallouts.ts';
import type { Rendering } from './rendering.ts';

/** How wide a picture stands on the page: on a wide screen, and on a narrow one. */
const widths = { step: ['51rem', '92vw'], cover: ['69rem', '92vw'] } as const;

/** What a browser that knows no choice of copies gets. */
const fallbackWidth = 960;

/** A picture with its caption, or, where no copy of it was made, a line that says so. */
export function renderPicture(picture: PictureBlock, rendering: Rendering, as: keyof typeof widths = 'step'): Html {
  const assets = rendering.assetsOf(picture);
  const largest = assets.at(-1);
  if (!largest) return renderMissing(`${picture.shot} could not be made ready for this page`, picture);
  return element(
    'figure',
    { class: as === 'cover' ? 'cover' : 'picture' },
    element(
      'a',
      { class: 'enlarge', href: relativeUrl(largest.name) },
      element('img', {
        src: relativeUrl((assets.findLast((asset) => asset.width <= fallbackWidth) ?? largest).name),
        srcset: assets.length > 1 ? assets.map(candidate).join(', ') : null,
        sizes: assets.length > 1 ? sizesOf(as, largest.width) : null,
        width: largest.width,
        height: largest.height,
        alt: picture.alt,
        loading: as === 'cover' ? null : 'lazy',
        decoding: 'async',
      }),
      renderCallouts(picture),
    ),
    renderCalloutWords(picture),
    picture.caption !== null && element('figcaption', {}, picture.caption),
  );
}

export function renderMissingPicture(missing: MissingPictureBlock): Html {
  return renderMissing(reasons[missing.why](missing.wanted), missing);
}

const reasons: Readonly<Record<MissingPictureBlock['why'], (wanted: string) => string>> = {
  'not-found': (wanted) => `${wanted} is not in the build folder`,
  elsewhere: (wanted) => `it lies elsewhere, at ${wanted}, and this page asks nothing of other sites`,
  unreadable: (wanted) => `${wanted} could not be read`,
  clip: (wanted) => `${wanted} is a clip, which this page does not play`,
};

function renderMissing(why: string, picture: { readonly alt: string; readonly caption: string | null }): Html {
  const shows = [picture.alt, picture.caption === picture.alt ? null : picture.caption].filter(Boolean).join('. ');
  return element(
    'p',
    { class: 'missing' },
    element('strong', {}, 'Picture missing: '),
    `${why}.${shows === '' ? '' : ` It was to show: ${shows}`}`,
  );
}

/** Tells the browser which copy will do; a picture is never shown larger than its largest copy. */
function sizesOf(as: keyof typeof widths, largest: number): string {
  const [wide, narrow] = widths[as];
  return `(min-width: 60rem) min(${wide}, ${largest}px), min(${narrow}, ${largest}px)`;
}

function candidate(asset: Asset): string {
  return `${relativeUrl(asset.name)} ${asset.width}w`;
}
