import { make } from './make.ts';

/** A picture opens large in front of the page; a second press shows every pixel of it. */
export function zoom(page: Document): void {
  const links = [...page.querySelectorAll<HTMLAnchorElement>('a.enlarge')];
  if (links.length === 0 || !('HTMLDialogElement' in window)) return;
  const picture = make('img', { alt: '' });
  const whole = make(
    'button',
    { type: 'button', class: 'sheet', 'aria-label': 'Every pixel, or the whole picture' },
    picture,
  );
  const words = make('p', { id: 'enlarged-words' });
  const close = make('button', { type: 'button', class: 'close' }, 'Close');
  const dialog = make('dialog', { class: 'enlarged', 'aria-labelledby': 'enlarged-words' }, close, whole, words);
  page.body.append(dialog);
  const showWhole = () => dialog.classList.remove('full');
  whole.addEventListener('click', () => dialog.classList.toggle('full'));
  close.addEventListener('click', () => dialog.close());
  dialog.addEventListener('click', ({ target }) => {
    if (target === dialog) dialog.close();
  });
  dialog.addEventListener('close', showWhole);
  for (const link of links) {
    link.addEventListener('click', (event) => {
      if (event.ctrlKey || event.metaKey || event.shiftKey) return;
      event.preventDefault();
      const shown = link.querySelector('img');
      picture.src = link.href;
      picture.alt = shown?.alt ?? '';
      words.textContent = link.closest('figure')?.querySelector('figcaption')?.textContent ?? shown?.alt ?? '';
      showWhole();
      dialog.showModal();
    });
  }
}
