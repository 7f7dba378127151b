import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { type Drawing, type Guide, type PartRow, partForms } from '#guide/guide.ts';
import bandColours from '#render/site/drawings/bandColours.json';
import { renderSite } from '#render/site/renderSite.ts';
import table from '../../src/notation/colourBands.json';
import { greenhouseWhisper } from './greenhouseWhisper.ts';
import { readPage, squeezed } from './readPage.ts';

const drawings: readonly Drawing[] = [
  { kind: 'banded', bands: ['orange', 'orange', 'brown', 'gold'] },
  { kind: 'banded', bands: ['red', 'red', 'black', 'black', 'brown', 'red'] },
  { kind: 'banded', bands: ['brown', 'black', 'red', null] },
  { kind: 'dual', pins: 14, feet: 'pins' },
  { kind: 'dual', pins: 64, feet: 'leads' },
  { kind: 'dual', pins: 8, feet: 'openings' },
  { kind: 'quad', pins: 32 },
  { kind: 'strip', rows: 2, columns: 20, openings: true },
  { kind: 'terminals', positions: 3 },
  { kind: 'plate', size: [70, 50], pins: { rows: 2, columns: 15 }, holes: true },
  { kind: 'plate', size: null, pins: { rows: 1, columns: 6 }, holes: false },
  { kind: 'plate', size: [200, 3], pins: null, holes: false },
  { kind: 'ring', outside: 86, inside: 72 },
  ...partForms.map((form): Drawing => ({ kind: 'form', form, print: ['104'] })),
];

/** The invented build with a row for every drawing, of which one costs and one is bought in packs. */
function withDrawings(): Guide {
  const guide = greenhouseWhisper();
  const parts = guide.blocks.find((block) => block.kind === 'parts');
  const [row] = parts?.rows ?? [];
  if (parts === undefined || row === undefined) throw new Error('the invented build has no parts');
  const rows = drawings.map(
    (drawing, i): PartRow => ({
      ...row,
      id: `part-Z${i}`,
      part: `Z${i}`,
      refs: [`Z${i}`],
      fitted: true,
      group: i < 3 ? 'On the board' : null,
      amounts: [{ n: 3, unit: 'pcs', approximate: false }],
      supplier: i === 0 ? null : i % 2 === 0 ? 'Bramble & Rook' : 'Quarry “Parts”',
      price: { amount: 0.9, currency: 'EUR', per: i === 1 ? 10 : 1, date: '2026-01-02' },
      packed: i === 1,
      note: i === 2 ? '=2+5, says the list' : null,
      look: { drawing, signs: [{ words: `Sign ${i}.`, usual: i % 2 === 0 }] },
    }),
  );
  return { ...guide, blocks: guide.blocks.map((block) => (block === parts ? { ...parts, rows } : block)) };
}

const guide = withDrawings();
const files = renderSite(guide, []);
const textOf = (path: string) => files.find((file) => file.path === path)?.text ?? '';
const page = readPage(textOf('parts.html'));

describe('the gathering sheet', () => {
  test('is well formed, names every element once, and leads to nothing that is not there', () => {
    const ids = page.elements.flatMap((one) => one.getAttribute('id') ?? []);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    const addresses = page.elements.flatMap((one) => ['href', 'src'].flatMap((name) => one.getAttribute(name) ?? []));
    const paths = new Set(files.map(({ path }) => path));
    const lost = addresses.filter((address) =>
      address.startsWith('#')
        ? !ids.includes(address.slice(1))
        : !address.startsWith('https://') && !paths.has(address),
    );
    expect(addresses.length).toBeGreaterThan(40);
    expect(lost).toEqual([]);
  });

  test('runs only the script beside it', () => {
    expect(page.named('script').map((one) => one.getAttribute('src') ?? one.getAttribute('type'))).toEqual([
      'gather.js',
      'application/json',
    ]);
    expect(page.elements.filter((one) => [...one.attributes].some(({ name }) => /^on|^style$/.test(name)))).toEqual([]);
  });

  test('draws every kind of thing inside its frame, and tells it in words too', () => {
    const drawn = page.named('svg').filter((one) => one.getAttribute('class') === 'drawing');
    expect(drawn).toHaveLength(drawings.length);
    for (const svg of drawn) {
      expect(svg.getAttribute('aria-label')).toMatch(/^Drawing: \S.{3,}/);
      expect(svg.getAttribute('role')).toBe('img');
    }
    // Places by absolute commands; lengths of arcs and relative moves are small.
    const places = page
      .named('path')
      .flatMap((one) => [...(one.getAttribute('d') ?? '').matchAll(/[ML](-?[\d.]+)[ ,](-?[\d.]+)/g)])
      .map(([, x, y]) => [Number(x), Number(y)] as const);
    expect(places.length).toBeGreaterThan(100);
    expect(places.filter(([x, y]) => x < 0 || x > 160 || y < 0 || y > 72)).toEqual([]);
    const numbers = page.elements.flatMap((one) => [...one.attributes].map(({ value }) => value));
    expect(numbers.filter((value) => /NaN|undefined|Infinity/.test(value))).toEqual([]);
  });

  test('draws a shared form once, and only where it is used', () => {
    expect(page.elements.filter((one) => one.getAttribute('id') === 'form-led')).toHaveLength(1);
    const plain = renderSite(greenhouseWhisper(), []).find(({ path }) => path === 'parts.html')?.text ?? '';
    expect(plain).not.toContain('form-led');
  });

  test('shows bands in their colours, names each in words, and leaves one open that nobody told', () => {
    const [four] = page.named('svg').filter((one) => one.getAttribute('class') === 'drawing');
    const bands = [...(four?.getElementsByTagName('rect') ?? [])];
    expect(bands.map((band) => band.getAttribute('fill'))).toEqual(
      (['orange', 'orange', 'brown', 'gold'] as const).map((colour) => bandColours[colour]),
    );
    expect(four?.getAttribute('aria-label')).toContain('orange, orange, brown and gold');
    const open = page.named('rect').filter((one) => one.getAttribute('class') === 'open-band');
    expect(open.map((one) => one.getAttribute('fill'))).toEqual([null]);
  });

  test('has a colour to show for every colour of the code', () => {
    expect(table.colours.filter(({ name }) => !(name in bandColours))).toEqual([]);
  });

  test('marks what makers mostly do, and says what the mark means', () => {
    const usual = page.elements.filter((one) => one.getAttribute('class') === 'usual');
    expect(usual.map((one) => one.textContent)).toEqual(
      drawings.flatMap((_, i) => (i % 2 === 0 ? [`Sign ${i}.`] : [])),
    );
    expect(page.words).toContain('italics is what makers mostly do: common practice');
  });

  test('has a tick for every part under the name that the guide’s own ticks have', () => {
    const guidePage = readPage(textOf('index.html'));
    const items = page.named('li').filter((one) => one.getElementsByTagName('input').length === 1);
    expect(items).toHaveLength(drawings.length);
    for (const item of items) expect(guidePage.byId(item.getAttribute('id') ?? '')?.nodeName).toBe('tr');
    expect(page.root.getAttribute('data-guide')).toBe(guidePage.root.getAttribute('data-guide'));
  });

  test('is linked from the parts of the guide, and leaves out what is not fitted', () => {
    const links = readPage(textOf('index.html')).named('a');
    expect(links.some((one) => one.getAttribute('href') === 'parts.html')).toBe(true);
    const parts = guide.blocks.find((block) => block.kind === 'parts');
    const rows = (parts?.rows ?? []).map((row, i) => (i === 0 ? { ...row, fitted: false } : row));
    const less = renderSite(
      { ...guide, blocks: guide.blocks.map((block) => (block === parts && parts ? { ...parts, rows } : block)) },
      [],
    );
    const sheet = readPage(less.find(({ path }) => path === 'parts.html')?.text ?? '');
    expect(sheet.byId('part-Z0')).toBeUndefined();
    expect(sheet.words).toContain('one row of the list, not fitted, left out here');
  });

  test('is not made where there are no parts', () => {
    const blocks = guide.blocks.filter((block) => block.kind !== 'parts');
    expect(renderSite({ ...guide, blocks }, []).filter(({ path }) => /^parts|^gather/.test(path))).toEqual([]);
  });
});

describe('the list for shopping', () => {
  test('stands for one build without a script, by supplier, with its sums', () => {
    expect(page.named('h3').map((one) => squeezed(one.textContent ?? ''))).toEqual([
      'On the board',
      'Quarry “Parts”',
      'Bramble & Rook',
      'No supplier told',
    ]);
    const cost = page.named('td').filter((one) => one.getAttribute('class') === 'number cost');
    // Three pieces at 0.90, and one whole pack.
    expect([...new Set(cost.map((one) => one.textContent))].sort()).toEqual(['0.90 EUR', '2.70 EUR']);
    const rows = drawings.length;
    expect(page.byId('whole-sum')?.textContent).toBe(
      `${(2.7 * (rows - 1) + 0.9).toFixed(2)} EUR, by prices of 2026-01-02.`,
    );
    expect(page.byId('builds')?.parentNode?.toString()).toContain('hidden');
    expect(page.byId('state')?.textContent).toBe('For one build, nothing left out.');
  });

  test('is a file too, which papaparse reads back and no spreadsheet takes for formulas', () => {
    const read = Papa.parse<Record<string, string>>(textOf('parts.csv'), { header: true, skipEmptyLines: true });
    expect(read.errors).toEqual([]);
    expect(read.data).toHaveLength(drawings.length);
    expect(new Set(read.data.map((row) => row.Supplier))).toEqual(new Set(['Quarry “Parts”', 'Bramble & Rook', '']));
    expect(read.data.filter((row) => row.Note !== '').map((row) => row.Note)).toEqual(["'=2+5, says the list"]);
    expect(read.data.find((row) => row.References === 'Z1')).toMatchObject({
      Amount: '3',
      Packs: '1',
      Cost: '0.90',
    });
  });

  test('hands the script the same rows as data', () => {
    const data = page.named('script').find((one) => one.getAttribute('type') === 'application/json')?.textContent ?? '';
    expect(JSON.parse(data).map((row: { id: string }) => row.id)).toEqual(drawings.map((_, i) => `part-Z${i}`));
  });
});
