import { make } from './make.ts';
import type { Ticks } from './store.ts';

/** Boxes to tick at each part, tool and step; what is ticked stays so in this browser. */
export function tickOff(page: Document, ticks: Ticks): void {
  for (const row of page.querySelectorAll<HTMLElement>('.parts tr[id]')) {
    const words = textOf(row.querySelector('.refs')) || textOf(row.querySelector('.name'));
    row.querySelector('td, th')?.prepend(boxFor(row, `${words} lies ready`, ticks));
  }
  for (const item of page.querySelectorAll<HTMLElement>('#tools .tools li[id]')) {
    item.prepend(boxFor(item, `${textOf(item.querySelector('.name'))} lies ready`, ticks));
  }
  for (const step of page.querySelectorAll<HTMLElement>('.step')) {
    const box = boxFor(step, '', ticks, (done) => markEntry(page, step.id, done));
    step.querySelector('.onward')?.prepend(make('label', { class: 'tick' }, box, ' This step is done'));
  }
  for (const id of ['parts', 'tools']) tally(page.getElementById(id));
}

function boxFor(
  whole: HTMLElement,
  name: string,
  ticks: Ticks,
  changed: (ticked: boolean) => void = () => undefined,
): HTMLInputElement {
  const box = make('input', { type: 'checkbox', class: 'tick-box', ...(name === '' ? {} : { 'aria-label': name }) });
  const show = (ticked: boolean) => {
    box.checked = ticked;
    whole.classList.toggle('ticked', ticked);
    changed(ticked);
  };
  box.addEventListener('change', () => {
    ticks.set(whole.id, box.checked);
    show(box.checked);
    whole.dispatchEvent(new CustomEvent('ticked', { bubbles: true }));
  });
  show(ticks.has(whole.id));
  return box;
}

/** In the list of steps, a step that is done says so. */
function markEntry(page: Document, id: string, done: boolean): void {
  for (const link of page.querySelectorAll<HTMLAnchorElement>('.course a')) {
    if (decodeURIComponent(link.hash.slice(1)) !== id) continue;
    link.parentElement?.classList.toggle('ticked', done);
    link.querySelector('.unseen')?.remove();
    if (done) link.append(make('span', { class: 'unseen' }, ', done'));
  }
}

/** How many lie ready, said again whenever one is ticked. */
function tally(section: HTMLElement | null): void {
  const boxes = [...(section?.querySelectorAll<HTMLInputElement>('.tick-box') ?? [])];
  const content = section?.querySelector('.content');
  if (boxes.length === 0 || !content) return;
  const words = make('p', { class: 'tally', role: 'status' });
  const count = () => {
    const ready = boxes.filter((box) => box.checked).length;
    words.textContent = ready === 0 ? 'Tick what lies ready.' : `${ready} of ${boxes.length} lie ready.`;
  };
  count();
  section?.addEventListener('ticked', count);
  content.prepend(words);
}

function textOf(node: Element | null): string {
  return node?.textContent?.trim() ?? '';
}
