import { describe, expect, test } from 'vitest';
import { everyBlock } from '#guide/everyBlock.ts';
import type { Guide, GuideBlock, PageBlock, StepBlock, WorkBlock } from '#guide/guide.ts';
import { filePath } from '#render/site/renderFiles.ts';
import { renderSite } from '#render/site/renderSite.ts';
import { assetsFor } from './assetsFor.ts';
import { greenhouseWhisper } from './greenhouseWhisper.ts';
import { type Page, readPage, squeezed } from './readPage.ts';
import { shownTexts } from './shownTexts.ts';

const guide = greenhouseWhisper();
const assets = assetsFor(guide);
const files = renderSite(guide, assets);
const html = textOf('index.html');
const page = readPage(html);
const codePage = readPage(textOf('code.html'));

const everyKind: Readonly<Record<GuideBlock['kind'], true>> = {
  cover: true,
  summary: true,
  cautionList: true,
  section: true,
  parts: true,
  tools: true,
  wiring: true,
  work: true,
  step: true,
  codeFile: true,
  licences: true,
  credits: true,
  revision: true,
  paragraph: true,
  heading: true,
  list: true,
  listing: true,
  quote: true,
  table: true,
  rule: true,
  picture: true,
  missingPicture: true,
  caution: true,
  mistake: true,
  measure: true,
  expect: true,
  notices: true,
  erratum: true,
  troubles: true,
  files: true,
};

function textOf(path: string, among = files): string {
  return among.find((file) => file.path === path)?.text ?? '';
}

describe('a guide with every kind of block', () => {
  test('is what is rendered here', () => {
    const kinds = new Set([...everyBlock(guide)].map((block) => block.kind));
    expect([...kinds].sort()).toEqual(Object.keys(everyKind).sort());
  });

  test('loses no text on its way to the page', () => {
    const texts = shownTexts(guide);
    expect(texts.length).toBeGreaterThan(150);
    expect(texts.map(squeezed).filter((text) => !page.words.includes(text) && !codePage.words.includes(text))).toEqual(
      [],
    );
  });

  test('renders to the same bytes twice, and after a trip through JSON', () => {
    expect(renderSite(greenhouseWhisper(), assetsFor(greenhouseWhisper()))).toEqual(files);
    const travelled: Guide = JSON.parse(JSON.stringify(guide));
    expect(travelled).toEqual(guide);
    expect(renderSite(travelled, assets)).toEqual(files);
  });

  test('gives quantities in the one notation', () => {
    expect(page.words).toContain('330 Ω, 250 mW, ±5 %, axial');
    expect(page.words).toContain('100 nF');
  });
});

describe('the page', () => {
  test('names every element once', () => {
    const ids = page.elements.flatMap((one) => one.getAttribute('id') ?? []);
    expect(ids.length).toBeGreaterThan(50);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    expect(ids.filter((id) => /\s/.test(id))).toEqual([]);
  });

  test('leads every address to itself, to a file beside it, or to a web page on request', () => {
    const known = new Set([
      ...files.map((file) => file.path),
      ...assets.map((asset) => asset.name),
      filePath('design/stake.scad'),
    ]);
    const addresses = page.elements.flatMap((one) => ['href', 'src'].flatMap((name) => one.getAttribute(name) ?? []));
    const srcset = page.named('img').flatMap((img) => (img.getAttribute('srcset') ?? '').split(', '));
    const all = [...addresses, ...srcset.flatMap((candidate) => candidate.split(' ')[0] || [])];
    expect(all.length).toBeGreaterThan(80);
    const lost = all.filter((address) => {
      if (address.startsWith('#')) return page.byId(decodeURIComponent(address.slice(1))) === undefined;
      return !address.startsWith('https://example.org/') && !known.has(decodeURIComponent(address.replace(/#.*$/, '')));
    });
    expect(lost).toEqual([]);
  });

  test('fetches nothing from anywhere else and runs only the script beside it', () => {
    const fetching = page.named('img', 'link', 'script', 'iframe', 'source', 'use', 'object', 'video');
    const addresses = fetching.map((one) => one.getAttribute('src') ?? one.getAttribute('href') ?? '');
    expect(addresses.filter((address) => /^[a-z]+:|^\/\//i.test(address))).toEqual([]);
    expect(page.named('script').map((one) => one.getAttribute('src') ?? one.getAttribute('type'))).toEqual([
      'guide.js',
      'application/ld+json',
    ]);
    expect(page.elements.filter((one) => [...one.attributes].some(({ name }) => /^on|^style$/.test(name)))).toEqual([]);
  });

  test('describes every picture and keeps its place while it loads', () => {
    const images = page.named('img');
    expect(images).toHaveLength(6);
    for (const image of images) {
      expect(image.getAttribute('alt')).not.toBe('');
      expect(Number(image.getAttribute('width'))).toBeGreaterThan(0);
      expect(Number(image.getAttribute('height'))).toBeGreaterThan(0);
    }
  });

  test('offers every copy of a picture by its width and loads only the cover at once', () => {
    const [cover, ...others] = page.named('img');
    expect(
      cover
        ?.getAttribute('srcset')
        ?.split(', ')
        .map((one) => one.split(' ')[1]),
    ).toEqual(['480w', '960w', '1200w', '1600w']);
    expect(cover?.getAttribute('loading')).toBeNull();
    expect(others.map((one) => one.getAttribute('loading'))).toEqual(others.map(() => 'lazy'));
    const small = others.find((one) => one.getAttribute('src')?.endsWith('.png'));
    expect(small?.getAttribute('width')).toBe('900');
    expect(small?.getAttribute('sizes')).toContain('900px');
  });

  test('ranks its headings without a gap, under one title', () => {
    const ranks = page.named('h1', 'h2', 'h3', 'h4', 'h5', 'h6').map((one) => Number(one.nodeName.slice(1)));
    expect(ranks.filter((rank) => rank === 1)).toHaveLength(1);
    expect(ranks[0]).toBe(1);
    expect(ranks.filter((rank, i) => rank > (ranks[i - 1] ?? 0) + 1)).toEqual([]);
  });

  test('tells what each table cell is about', () => {
    for (const table of page.named('table')) {
      const headers = [...table.getElementsByTagName('th')];
      expect(headers.length).toBeGreaterThan(0);
      expect(headers.filter((header) => header.getAttribute('scope') === null)).toEqual([]);
      const [first, ...rows] = [...table.getElementsByTagName('tr')].filter(
        (row) => row.getAttribute('class') !== 'group',
      );
      const columns = first?.getElementsByTagName('th').length;
      for (const row of rows) {
        expect([...row.childNodes].length).toBe(columns);
      }
    }
  });

  test('names its language, its title, a way past the opening, and one main part', () => {
    expect(page.root.getAttribute('lang')).toBe('en');
    expect(page.named('title')[0]?.textContent).toBe('The greenhouse whisper');
    expect(page.named('a')[0]?.getAttribute('href')).toBe('#steps');
    expect(page.named('main')).toHaveLength(1);
  });

  test('hands out each source file as it stands, credentials counted', () => {
    expect(textOf('code/firmware/whisper.ino')).toContain('Serial.println("<thirsty> & waiting")');
    expect(page.words).toContain('2 credentials have been taken out; put your own in their place.');
    expect(codePage.words).toContain('Serial.println("<thirsty> & waiting")');
  });
});

describe('a step', () => {
  test('says what can hurt before it says what to do', () => {
    const words = squeezed(page.byId('step-solder-the-headers')?.textContent ?? '');
    expect(words.indexOf('CAUTION')).toBeGreaterThan(0);
    expect(words.indexOf('CAUTION')).toBeLessThan(words.indexOf('cannot be undone'));
    expect(words.indexOf('cannot be undone')).toBeLessThan(words.indexOf('Seat the headers'));
    expect(words.indexOf('Seat the headers')).toBeLessThan(words.indexOf('You should now measure'));
  });

  // ANSI Z535.4-2007: the safety alert symbol stands with DANGER, WARNING and CAUTION, never with NOTICE.
  test.each([
    ['danger', 1],
    ['warning', 1],
    ['caution', 1],
    ['notice', 0],
  ])('shows the alert symbol with %s %d times', (word, times) => {
    const panels = page.elements.filter((one) => one.getAttribute('class') === `caution caution-${word}`);
    expect(panels.length).toBeGreaterThan(0);
    for (const panel of panels) {
      expect(panel.getElementsByTagName('svg')).toHaveLength(times);
      expect(squeezed(panel.textContent ?? '').startsWith(word.toUpperCase())).toBe(true);
    }
  });

  test('says what it needs, leads to it, and says how the power stands', () => {
    const step = page.byId('step-wire-the-ring');
    const items = [...(step?.getElementsByTagName('li') ?? [])].map((item) => item.textContent);
    expect(items.slice(0, 3)).toEqual([
      'H1 LED ring, 12 pixels',
      'R1 resistor, 330 Ω',
      'Tools: soldering iron, third hand',
    ]);
    const joins = items.filter((item) => item?.includes(', to '));
    expect(joins.slice(0, 2)).toEqual(['U1.5V, red, 12 cm, to H1.5V', 'U1.GND, black, 12 cm, to H1.GND']);
    expect(items.at(-1)).toBe('R1.2 to H1.IN');
    expect(step?.textContent).toContain('The power stays off.');
    expect([...(step?.getElementsByTagName('a') ?? [])].map((a) => a.getAttribute('href'))).toContain('#part-H1');
  });

  test('asks for readings without power before the text that ends in switching it on', () => {
    const blocks = guide.blocks.map((block) => (block.kind === 'work' ? measuredFirst(block) : block));
    const words = squeezed(
      readPage(textOf('index.html', renderSite({ ...guide, blocks }, assets))).byId('step-solder-the-headers')
        ?.textContent ?? '',
    );
    const before = words.indexOf('Before the power goes on, measure');
    expect(before).toBeGreaterThan(words.indexOf('CAUTION'));
    expect(before).toBeLessThan(words.indexOf('Seat the headers'));
  });

  test('puts cautions of one signal word under that word once, the gravest word first', () => {
    const blocks = guide.blocks.map((block) =>
      block.kind === 'cautionList' ? { ...block, cautions: [...block.cautions, ...block.cautions].reverse() } : block,
    );
    const twice = readPage(textOf('index.html', renderSite({ ...guide, blocks }, assets))).byId('cautions');
    const signals = [...(twice?.getElementsByTagName('strong') ?? [])].map((word) => word.textContent);
    expect(signals).toEqual(['DANGER', 'WARNING', 'CAUTION', 'NOTICE']);
    expect(twice?.getElementsByTagName('li')).toHaveLength(8);
  });

  test('reads a measurement as a sentence to who cannot see the drawing', () => {
    const measure = page.elements.find((one) => one.getAttribute('class') === 'measure');
    const heard = [...(measure?.childNodes ?? [])].filter((child) => !/aria-hidden="true"/.test(String(child)));
    expect(squeezed(heard.map((child) => child.textContent ?? '').join(''))).toBe(
      'Between U1.5V and U1.GND measure > 1 kΩ',
    );
  });

  test('says in words which picture is missing and why', () => {
    expect(page.words).toContain(
      'Picture missing: photos/ring-back.jpg is not in the build folder. It was to show: The back of the ring, four joints',
    );
    const bare = readPage(textOf('index.html', renderSite(guide, [])));
    expect(bare.named('img')).toEqual([]);
    expect(bare.words).toContain('Picture missing: photos/wires.jpg could not be made ready for this page.');
  });

  test.each([1, 7, 60])('of %d can be reached from the list and from its neighbours', (count) => {
    const long = readPage(textOf('index.html', renderSite(withSteps(count), assets)));
    const links = (id: string) =>
      [...(long.byId(id)?.getElementsByTagName('a') ?? [])].map((a) => a.getAttribute('href'));
    const ids = Array.from({ length: count }, (_, i) => `#many-${i + 1}`);
    expect(links('steps')).toEqual(ids);
    for (let i = 0; i < count; i++) {
      const onward = links(`many-${i + 1}`).filter((href) => href?.startsWith('#many-') || href === '#steps');
      expect(onward).toEqual([ids[i - 1], '#steps', ids[i + 1]].filter((href) => href !== undefined));
    }
  });
});

describe('a hostile guide', () => {
  const attack = `"><script>alert('x')</script><img src=x onerror=alert(1)>`;
  const hostile = poisoned(guide, attack);
  const outcome = renderSite(hostile, assets);
  const read = readPage(textOf('index.html', outcome));

  test('shows its markup as text and gets no element of its own', () => {
    expect(read.named('script')).toHaveLength(page.named('script').length);
    expect(solid(read)).toEqual(solid(page));
    expect(read.elements.some((one) => one.getAttribute('onerror') !== null)).toBe(false);
    expect(read.words).toContain(squeezed(attack));
  });

  test('gets no address that runs code', () => {
    const addresses = read.elements.flatMap((one) => one.getAttribute('href') ?? one.getAttribute('src') ?? []);
    expect(addresses.length).toBeGreaterThan(50);
    expect(addresses.filter((address) => /^\s*(javascript|data|vbscript):/i.test(address))).toEqual([]);
  });

  test('cannot write outside the code folder or set a language of its own', () => {
    const code = hostile.blocks.map((block) =>
      block.kind === 'codeFile' ? { ...block, path: '../../.././etc/passwd' } : block,
    );
    const paths = renderSite({ ...hostile, blocks: code, language: 'en" onload="x' }, assets).map((file) => file.path);
    expect(paths.filter((path) => path.endsWith('passwd'))).toEqual(['code/etc/passwd', 'code/etc/passwd']);
    expect(textOf('index.html', renderSite({ ...guide, language: 'en" onload="x' }, []))).toContain(
      '<html lang="en" data-guide=',
    );
  });
});

describe('a bare guide', () => {
  const bare: Guide = {
    format: 2,
    language: 'de-CH',
    title: 'Leer',
    summary: null,
    site: null,
    reports: null,
    blocks: [{ kind: 'licences', id: 'licences', places: [], licences: [] }],
  };

  test('is still a page, and says that nobody named a licence', () => {
    const read = readPage(textOf('index.html', renderSite(bare, [])));
    expect(read.root.getAttribute('lang')).toBe('de-CH');
    expect(read.words).toContain('The maker names no licence.');
    expect(read.byId('steps')).toBeUndefined();
    expect(read.named('a').map((a) => a.getAttribute('href'))).toEqual(['#licences']);
  });
});

/** Names of all elements but those that come and go with a link. */
function solid({ elements }: Page): string[] {
  return elements.map((one) => one.nodeName).filter((name) => name !== 'a' && name !== 'span');
}

function withSteps(count: number): Guide {
  const work = guide.blocks.find((block): block is WorkBlock => block.kind === 'work');
  const steps = (work?.blocks ?? []).filter((block): block is StepBlock => block.kind === 'step');
  const many = Array.from({ length: count }, (_, i) => renamed(steps[i % steps.length], i + 1)).filter(
    (step) => step !== null,
  );
  const blocks: PageBlock[] = [{ kind: 'work', id: 'work-steps', places: [], blocks: many }];
  return { ...guide, blocks };
}

/** The same work, each step's readings moved before its text. */
function measuredFirst(work: WorkBlock): WorkBlock {
  const moved = work.blocks.map((block) => {
    if (block.kind !== 'step') return block;
    return { ...block, beforePower: block.checks.filter((check) => check.kind === 'measure'), checks: [] };
  });
  return { ...work, blocks: moved };
}

function renamed(step: StepBlock | undefined, number: number): StepBlock | null {
  return step ? { ...step, id: `many-${number}`, number } : null;
}

/** The same guide with the attack in every text, and an address that runs code in every link. */
function poisoned(original: Guide, attack: string): Guide {
  const kept = new Set([
    'kind',
    'id',
    'block',
    'row',
    'shot',
    'format',
    'language',
    'step',
    'word',
    'is',
    'about',
    'covers',
    'why',
    'asOf',
    'unit',
  ]);
  return JSON.parse(JSON.stringify(original), (key: string, value: unknown) => {
    if (key === 'url') return 'javascript:alert(1)';
    return typeof value !== 'string' || kept.has(key) || /^\d+$/.test(key) ? value : `${value}${attack}`;
  }) as Guide;
}
