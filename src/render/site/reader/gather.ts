// What the gathering sheet does beyond showing it: keeps ticks, and counts what to buy for so many builds.
import { formatCsv } from './csv.ts';
import { readBuilds, type Shopping, shoppingFor, type Wanted } from './shopping.ts';
import { amountWords, costWords, packWords, shoppingRows, stateWords, sumWords } from './shoppingWords.ts';
import { openTicks, ownStorage } from './store.ts';

const ticks = openTicks(document.documentElement.dataset.guide ?? '', ownStorage(window));
const wanted: Wanted[] = JSON.parse(document.querySelector('script[type="application/json"]')?.textContent ?? '[]');
const boxes = [...document.querySelectorAll<HTMLInputElement>('.bag .tick-box')];
const builds = document.querySelector<HTMLInputElement>('#builds');

for (const box of boxes) {
  box.addEventListener('change', () => {
    ticks.set(idOf(box), box.checked);
    show();
  });
}
builds?.addEventListener('input', show);
builds?.closest<HTMLElement>('.builds')?.removeAttribute('hidden');
// Another page of the guide may tick meanwhile.
window.addEventListener('storage', show);
window.addEventListener('pageshow', show);
document.querySelector('#take')?.addEventListener('click', (event) => {
  event.preventDefault();
  save('parts.csv', formatCsv(shoppingRows(listed().shopping)));
});
show();

function listed(): { shopping: Shopping; owned: ReadonlySet<string>; count: number } {
  const count = readBuilds(builds?.value ?? '') ?? 1;
  const ticked = new Set(ticks.list());
  const owned = new Set(wanted.filter(({ id }) => ticked.has(id)).map(({ id }) => id));
  return { shopping: shoppingFor(wanted, count, owned), owned, count };
}

function show(): void {
  const { shopping, owned, count } = listed();
  for (const box of boxes) {
    box.checked = ticks.has(idOf(box));
    box.closest('li')?.classList.toggle('ticked', box.checked);
  }
  builds?.setAttribute('aria-invalid', String(readBuilds(builds.value) === null));
  write(document.querySelector('#state'), stateWords(count, owned.size, wanted.length - owned.size));
  write(document.querySelector('#whole-sum'), sumWords(shopping.sums) || 'nothing.');
  const rows = new Map(shopping.errands.flatMap((errand) => errand.rows).map((row) => [row.wanted.id, row]));
  for (const line of document.querySelectorAll<HTMLElement>('[data-row]')) {
    const row = rows.get(line.dataset.row ?? '');
    line.hidden = row === undefined;
    if (row === undefined) continue;
    write(line.querySelector('.amount'), amountWords(row));
    write(line.querySelector('.packs'), packWords(row));
    write(line.querySelector('.cost'), costWords(row));
  }
  for (const part of document.querySelectorAll<HTMLElement>('.errand')) {
    const inside = new Set([...part.querySelectorAll<HTMLElement>('[data-row]')].map((line) => line.dataset.row));
    const errand = shopping.errands.find((one) => one.rows.some((row) => inside.has(row.wanted.id)));
    part.hidden = errand === undefined;
    if (errand !== undefined) write(part.querySelector('.sum .figure'), sumWords(errand.sums) || 'nothing.');
  }
}

function write(place: Element | null, words: string): void {
  if (place !== null && place.textContent !== words) place.textContent = words;
}

function idOf(box: HTMLInputElement): string {
  return box.closest('li')?.id ?? '';
}

function save(name: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
