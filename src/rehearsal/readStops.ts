import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Facts } from '#core/facts.ts';
import type { Stop } from '#core/ledger.ts';
import type { TextPlace } from '#core/place.ts';
import type { TermMention } from '#core/term.ts';
import type { ScriptStep } from './script.ts';
import { placesOfSteps } from './stepOrder.ts';

/** Stops that the words of the steps alone give rise to. */
export function findReadStops(build: Build, facts: Facts, script: readonly ScriptStep[]): Stop[] {
  return [...temporaries(build, facts, script), ...waits(facts), ...unexplained(build, facts)];
}

/** What was put in for a while, in a guide that from there on takes nothing away. */
function temporaries(build: Build, facts: Facts, script: readonly ScriptStep[]): Stop[] {
  const order = placesOfSteps(build);
  const isLater = (place: TextPlace, than: TextPlace) => {
    const [a, b] = [order.sectionAt(place), order.sectionAt(than)];
    return a > b || (a === b && place.span[0] >= than.span[0]);
  };
  return facts.temporaries.flatMap(({ step, place }): Stop[] => {
    const isTakenBack =
      facts.actions.some(
        (action) => takesAway.has(action.kind) && action.told !== 'not' && isLater(action.place, place),
      ) || script.some(({ id, facts: own }) => own.removes.length > 0 && order.ofStep(id) >= order.ofStep(step));
    return isTakenBack ? [] : [{ kind: 'temporary-stays', step, claim: readClaim(null, place) }];
  });
}

const takesAway: ReadonlySet<string> = new Set(['remove', 'desolder', 'unplug', 'cut', 'switch-off']);

function waits({ openWaits }: Facts): Stop[] {
  return openWaits.map(({ step, what, place }) => ({ kind: 'wait-untold', step, what, claim: readClaim(what, place) }));
}

/** Each word where a step first uses it, unless it was explained there or before. */
function unexplained(build: Build, { terms }: Facts): Stop[] {
  const order = placesOfSteps(build);
  const known = new Set(terms.filter(({ told }) => told === 'beforehand').map(({ term }) => term));
  const keyOf = ({ term, place }: TermMention) => `${order.sectionAt(place)} ${term}`;
  const explained = new Set(terms.filter(({ told }) => told === 'explained').map(keyOf));
  const words: TermMention[] = [];
  for (const mention of terms) {
    if (known.has(mention.term)) continue;
    if (explained.has(keyOf(mention))) known.add(mention.term);
    else if (mention.step !== null) {
      known.add(mention.term);
      words.push(mention);
    }
  }
  return words.length === 0 ? [] : [{ kind: 'words-unexplained', step: null, claim: null, words }];
}

function readClaim<T>(value: T, place: TextPlace): Claim<T> {
  return { value, basis: 'read', places: [place], confidence: 0.6 };
}
