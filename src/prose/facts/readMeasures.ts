import { declared } from '#core/claim.ts';
import type { Measure, WrittenFact } from '#core/step.ts';
import { findQuantities } from '#notation/value.ts';
import { plainMessage, type Reading } from './reading.ts';

const comparison =
  /[<>≤≥≈~]|(?<=\s)[=±](?=\s)|\b(?:about|approx\.?|at least|at most|less than|more than|under|over|below|above|no continuity|continuity|open circuit|open|short|no beep|beeps?)\b/iu;
const parting = /\s+(?:–|—|-|→|to|and|bis|und|et|à|y|a)\s+|[–—→]/u;

/** `Measure: U1.5V – U1.GND > 1 kΩ`: where to probe, and what to read there. */
export function readMeasures(fact: WrittenFact): Reading<Measure> {
  const text = plainMessage(fact.value);
  const at = expectationAt(text);
  const between = text
    .slice(0, at)
    .replace(/^(?:across|between|from|at)\s+|[\s:,=]+$/giu, '')
    .split(parting)
    .map((probe) => probe.trim())
    .filter((probe) => probe !== '');
  const expect = text.slice(at).trim();
  if (at < text.length && expect !== '' && (between.length === 1 || between.length === 2)) {
    return { claims: [declared({ between, expect, text }, fact.place)], problems: [] };
  }
  return {
    claims: [],
    problems: [
      {
        place: fact.place,
        message: `'${fact.value}' cannot be read as a measurement. Expected two points to probe and what to read, such as U1.5V – U1.GND > 1 kΩ.`,
        remedy: 'Name the two points with a dash between them, then the reading with its unit.',
      },
    ],
  };
}

/** Where the reading begins: at a comparison, or at the first quantity. The length of the text where it states none. */
function expectationAt(text: string): number {
  const compared = comparison.exec(text)?.index ?? text.length;
  const quantity = findQuantities(text)[0]?.start ?? text.length;
  return Math.min(compared, quantity);
}
