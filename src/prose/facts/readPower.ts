import { declared } from '#core/claim.ts';
import type { PowerState, WrittenFact } from '#core/step.ts';
import words from './powerWords.json';
import type { Reading } from './reading.ts';

export interface Power {
  readonly during: PowerState;
  readonly after: PowerState;
}

/** `Power: off` holds through the step; `off → on` switches at its end. */
export function readPower(fact: WrittenFact): Reading<Power> {
  const states = fact.value
    .toLowerCase()
    .replace(/\([^)]*\)|[*`.]/g, ' ')
    .split(/→|->|=>|⇒|,?\s+(?:then|to|dann|puis|luego)\s+/)
    .map(stateOf);
  const [during, after = during] = states;
  if (during === undefined || during === null || after === undefined || after === null || states.length > 2) {
    return {
      claims: [],
      problems: [
        {
          place: fact.place,
          message: `'${fact.value}' does not say how the power is. Expected off, on, off → on or on → off.`,
          remedy: 'Write one of these, and put the rest into the text of the step.',
        },
      ],
    };
  }
  return { claims: [declared({ during, after }, fact.place)], problems: [] };
}

function stateOf(text: string): PowerState | null {
  const word = text.trim();
  if (words.on.includes(word)) return 'on';
  return words.off.includes(word) ? 'off' : null;
}
