import { declared } from '#core/claim.ts';
import type { WrittenFact } from '#core/step.ts';
import { parseItem } from '#notation/items.ts';
import type { KnownThings } from '../knownThings.ts';
import { itemsOf, type Reading } from './reading.ts';

/** `Tools: soldering iron, third hand`: the tools that a step needs, each by its listed name where it is listed. */
export function readTools(fact: WrittenFact, known: KnownThings): Reading<string> {
  const claims = itemsOf(fact).map(({ text, place }) => {
    const { name } = parseItem(text);
    return declared(known.toolNamed(text) ?? known.toolNamed(name) ?? name, place);
  });
  return { claims, problems: [] };
}
