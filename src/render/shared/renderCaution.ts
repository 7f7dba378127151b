import { type SignalWord, signalWords } from '#core/step.ts';
import { type Child, element, type Html } from './html.ts';

/** Signal words after ANSI Z535.4: the alert symbol stands with injury, never with mere damage. */
const tellsOfInjury: Readonly<Record<SignalWord, boolean>> = {
  danger: true,
  warning: true,
  caution: true,
  notice: false,
};

/** A caution as it is told: its message, and what follows it, such as a link to the step. */
export interface ToldCaution {
  readonly word: SignalWord;
  readonly message: string;
  readonly after?: readonly Child[];
}

/** Cautions where they are needed, the gravest first; those of one signal word stand together under it. */
export function renderCautions(cautions: readonly ToldCaution[]): Html[] {
  return signalWords.flatMap((word) => {
    const told = cautions.filter((caution) => caution.word === word);
    return told.length === 0 ? [] : [renderPanel(word, told)];
  });
}

function renderPanel(word: SignalWord, told: readonly ToldCaution[]): Html {
  const messages = told.map(({ message, after = [] }): Child[] => [message, ...after]);
  return element(
    'div',
    { class: `caution caution-${word}`, role: 'note' },
    element(
      'p',
      { class: 'signal' },
      tellsOfInjury[word] && renderAlertSymbol(),
      element('strong', {}, word.toUpperCase()),
    ),
    messages.length === 1
      ? element('p', {}, ...messages)
      : element('ul', {}, ...messages.map((message) => element('li', {}, ...message))),
  );
}

/** The safety alert symbol, an exclamation mark in a triangle, drawn from the page's one symbol of it. The word beside it says what it means. */
function renderAlertSymbol(): Html {
  return element(
    'svg',
    { class: 'alert', 'aria-hidden': 'true', width: 24, height: 22 },
    element('use', { href: '#alert' }),
  );
}

/** What a page with cautions holds once, before the first of them. */
export function renderAlertStock(): Html {
  return element(
    'svg',
    { class: 'stock', 'aria-hidden': 'true', width: 0, height: 0 },
    element(
      'symbol',
      { id: 'alert', viewBox: '0 0 24 22' },
      element('path', { class: 'alert-field', d: 'M12 1.5L23 20.5H1Z' }),
      element('path', {
        class: 'alert-mark',
        d: 'M10.9 7.5h2.2l-.4 6.8h-1.4zM12 15.7a1.35 1.35 0 1 1 0 2.7a1.35 1.35 0 1 1 0-2.7z',
      }),
    ),
  );
}
