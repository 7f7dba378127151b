import type { Element } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { judge } from '#checks/judge.ts';
import { renderLedger } from '#render/ledger/renderLedger.ts';
import { judgedFrom } from '../checks/judgedFrom.ts';
import { readPage, squeezed } from './readPage.ts';

const guide = `# Night & day

## Fit the lamp

- Parts: D1, R1
- Tools: iron
- Connects: D1.A – R1.2
- Time: 10 min + 1 h wait
- Side: top
- Warning: The iron is hot. Hold it by its handle.

Solder. A via, a small plated hole, leads down.

## Fit the switch

- Parts: SW1, R9
- Connects: SW1.1 – D1.K
- Removes: D1.A – R1.2
- Power: off → on

Solder.
`;
const files = {
  'guide.md': guide,
  'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\nR1,1,Resistor 150 Ω\nSW1,1,Switch\n,2,Screw\n',
};

async function page() {
  const judged = await judgedFrom(files);
  const { findings, verdict } = judge(judged);
  return readPage(renderLedger(judged, findings, verdict));
}

const wordsOf = (element: Element | undefined) => squeezed(element?.textContent ?? '');
const ofClass = (elements: readonly Element[], name: string) =>
  elements.filter((one) => (one.getAttribute('class') ?? '').split(' ').includes(name));

describe('the account of a rehearsal', () => {
  it('tells at the top what became of the builder and how much that stands on', async () => {
    const { named } = await page();
    expect(wordsOf(named('h1')[0])).toBe('Night & day');
    expect(wordsOf(named('header')[0])).toMatch(/is stopped.*3 of 4 parts.*1 of 2 steps tell/);
  });
  it('tells of each step what was in hand before and after, and when', async () => {
    const { byId } = await page();
    const first = wordsOf(byId('step-1'));
    expect(first).toMatch(/Begins at once, ends after 1 h 10 min\..*Power off\..*Side: top\..*iron/);
    expect(first).toMatch(
      /D1 White LED10R1 Resistor 150 Ω10.*made and connected01.*Cautions heard01.*Words explained01/,
    );
    expect(first).toMatch(/D1\.A to R1\.2/);
    expect(first).toMatch(/WARNINGThe iron is hot\./);
    expect(first).toMatch(/Words explained: via\./);
    const second = wordsOf(byId('step-2'));
    expect(second).toMatch(/Power off, then on\./);
    expect(second).toMatch(/Taken awayD1\.A to R1\.2/);
  });
  it('pins each stop once, where it happens, with the words of its witnesses', async () => {
    const { byId, elements } = await page();
    const stops = ofClass(elements, 'stop').map(wordsOf);
    expect(stops.filter((text) => text.includes('takes R9'))).toHaveLength(1);
    const pinned = wordsOf(ofClass(elements, 'stop-halts').find((stop) => wordsOf(stop).includes('takes R9')));
    expect(pinned).toMatch(/Halts the builder.*- Parts: SW1, R9guide\.md, line 16.*parts\.csv.*To do:/);
    expect(wordsOf(byId('end'))).toMatch(/The power is on\..*Left in the bag: Screw × 2/);
  });
  it('stands alone: no script, nothing from elsewhere, its links lead to places on it', async () => {
    const { root, named, byId } = await page();
    expect(named('script', 'link', 'img', 'iframe')).toEqual([]);
    expect(wordsOf(root)).not.toMatch(/url\(|@import/);
    const targets = named('a').map((link) => link.getAttribute('href') ?? '');
    expect(targets.length).toBeGreaterThan(2);
    for (const target of targets) expect(byId(target.slice(1)), target).toBeDefined();
  });
});
