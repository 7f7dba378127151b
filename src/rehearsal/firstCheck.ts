import type { Claim } from '#core/claim.ts';
import type { Stop } from '#core/ledger.ts';
import type { Measure } from '#core/step.ts';
import { isOhms } from './probe.ts';
import type { ScriptStep } from './script.ts';

/**
 * The circuit has power, and only a later step looks for a short between supply and ground, with nothing wired in
 * between. A board that is powered before anything is wired to it is another matter.
 */
export function findLateCheck(script: readonly ScriptStep[]): Stop[] {
  const on = script.findIndex(
    ({ facts }, at) =>
      (facts.power?.value.during === 'on' || facts.power?.value.after === 'on') &&
      script.slice(0, at + 1).some((step) => step.facts.connects.length > 0),
  );
  const switching = script[on];
  if (switching === undefined || switching.facts.power === null) return [];
  const late = script.findIndex(({ facts }, at) => at > on && facts.measures.some(isShortCheck));
  const checking = script[late];
  const claim = checking?.facts.measures.find(isShortCheck);
  if (checking === undefined || claim === undefined) return [];
  const isCheckedBefore = script
    .slice(0, on + 1)
    .some(({ facts }) => facts.measures.some(({ value }) => isOhms(value)));
  const isWiredBetween = script.slice(on + 1, late + 1).some(({ facts }) => facts.connects.length > 0);
  if (isCheckedBefore || isWiredBetween) return [];
  const { text } = claim.value;
  const since = switching.id;
  return [{ kind: 'checked-after-power', step: checking.id, claim, text, since, on: switching.facts.power }];
}

const ground = /\.(?:A|D)?(?:GND|VSS|0V|MINUS|NEG|-|−)/i;

function isShortCheck({ value }: Claim<Measure>): boolean {
  const { between, expect } = value;
  return (
    isOhms(value) &&
    /^\s*(?:[>≥]|over|above|more than|at least|no )/i.test(expect) &&
    between.some((end) => ground.test(end))
  );
}
