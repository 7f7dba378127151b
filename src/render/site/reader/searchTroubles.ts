import { make } from './make.ts';
import { matches } from './matches.ts';

/** A field above what helps to find a fault: only what holds the words written there stays in sight. */
export function searchTroubles(page: Document): void {
  const sections = [...page.querySelectorAll('[data-trouble]')];
  const entries = sections.flatMap((section) => [
    ...section.querySelectorAll<HTMLElement>('tbody tr, .troubles > div'),
  ]);
  const before = sections[0]?.querySelector('.content');
  if (entries.length < 2 || !before) return;
  const field = make('input', { type: 'search', id: 'symptom', autocomplete: 'off', spellcheck: 'false' });
  const found = make('p', { class: 'tally', role: 'status' });
  field.addEventListener('input', () => {
    let count = 0;
    for (const entry of entries) {
      entry.hidden = !matches(entry.textContent ?? '', field.value);
      if (!entry.hidden) count++;
    }
    found.textContent = field.value.trim() === '' ? '' : foundWords(count, entries.length);
  });
  before.prepend(make('div', { class: 'ask' }, make('label', { for: 'symptom' }, 'What do you see?'), field, found));
}

function foundWords(count: number, all: number): string {
  if (count === 0) return 'Nothing here speaks of that. Try another word, or take one away.';
  return count === 1 ? `One of ${all} speaks of that.` : `${count} of ${all} speak of that.`;
}
