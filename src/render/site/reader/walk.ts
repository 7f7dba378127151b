import { make } from './make.ts';
import { swiped } from './swiped.ts';

/** One step at a time, with arrow keys, a swipe, or two large buttons under the thumb. */
export function walk(window: Window): void {
  const page = window.document;
  const root = page.documentElement;
  const steps = [...page.querySelectorAll<HTMLElement>('.step')];
  const course = page.querySelector('.course');
  if (steps.length < 2 || course === null) return;
  let at = -1;

  const back = make('button', { type: 'button' }, 'Back');
  const on = make('button', { type: 'button', class: 'on' }, 'Next');
  const where = make('p', { role: 'status' });
  const leave = make('button', { type: 'button', class: 'leave' }, 'Show everything');
  const bar = make(
    'nav',
    { class: 'stride', 'aria-label': 'One step at a time' },
    back,
    make('div', {}, where, leave),
    on,
  );
  const enter = make('button', { type: 'button', class: 'enter' }, 'Take it one step at a time');
  bar.hidden = true;
  page.body.append(bar);
  course.append(enter);

  const show = (next: number) => {
    const step = steps[next];
    if (step === undefined) return;
    steps[at]?.classList.remove('now');
    at = next;
    step.classList.add('now');
    root.classList.add('walking');
    bar.hidden = false;
    back.disabled = at === 0;
    on.disabled = at === steps.length - 1;
    where.textContent = `Step ${at + 1} of ${steps.length}`;
    window.history.replaceState(null, '', `#${encodeURIComponent(step.id)}`);
    window.scrollTo(0, 0);
    const heading = step.querySelector<HTMLElement>('h3, h4, h5, h6');
    heading?.setAttribute('tabindex', '-1');
    heading?.focus({ preventScroll: true });
  };
  const end = () => {
    const step = steps[at];
    root.classList.remove('walking');
    step?.classList.remove('now');
    bar.hidden = true;
    at = -1;
    step?.scrollIntoView();
    step?.querySelector<HTMLElement>('[tabindex="-1"]')?.focus({ preventScroll: true });
  };
  const shownByHash = () => steps.findIndex((step) => step.id === decodeURIComponent(window.location.hash.slice(1)));

  enter.addEventListener('click', () => {
    const named = shownByHash();
    const open = steps.findIndex((step) => !step.classList.contains('ticked'));
    show(named >= 0 ? named : Math.max(0, open));
  });
  back.addEventListener('click', () => show(at - 1));
  on.addEventListener('click', () => show(at + 1));
  leave.addEventListener('click', end);
  page.addEventListener('keydown', (event) => {
    if (at < 0 || event.altKey || event.ctrlKey || event.metaKey || isWriting(event.target)) return;
    if (page.querySelector('dialog[open]') !== null) return;
    if (event.key === 'ArrowRight') show(at + 1);
    else if (event.key === 'ArrowLeft') show(at - 1);
    else if (event.key === 'Escape') end();
    else return;
    event.preventDefault();
  });
  swiped(page, (towards) => {
    if (at >= 0) show(towards === 'left' ? at + 1 : at - 1);
  });
  // A link to another step walks there; one to anything else shows the whole page again.
  window.addEventListener('hashchange', () => {
    if (at < 0) return;
    const named = shownByHash();
    if (named >= 0) show(named);
    else {
      end();
      page.getElementById(decodeURIComponent(window.location.hash.slice(1)))?.scrollIntoView();
    }
  });
}

function isWriting(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.type !== 'checkbox';
}
