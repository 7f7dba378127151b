import type { Action, ActionKind } from '#core/action.ts';
import type { Claim } from '#core/claim.ts';
import { isJoin, type Join, type PartUse, type PowerState } from '#core/step.ts';
import { actionsOfStep } from './actionsOfStep.ts';
import type { Bench, PoweredSince } from './bench.ts';
import type { ScriptStep } from './script.ts';
import { sentenceAround } from './sentenceAround.ts';

/** Switches as the step declares it. */
export function turn(bench: Bench, power: PowerState, step: ScriptStep): void {
  bench.readPoweredSince = null;
  bench.isToldOff = false;
  if (power === 'off') bench.poweredSince = null;
  else if (step.facts.power !== null) bench.poweredSince ??= { step: step.id, claim: step.facts.power };
}

/** A plug is made to be pushed in under power; a soldering iron and a bare wire are not. */
export function stopIfPowered(bench: Bench, step: ScriptStep, claim: Claim<unknown>, join: Join | PartUse): void {
  const isPlug = isJoin(join) && [join.from.pin, join.to.pin].some((pin) => /USB|PLUG|JACK/i.test(pin));
  if (bench.poweredSince === null || bench.isToldOff || isPlug) return;
  bench.stops.push({ kind: 'powered-while-working', step: step.id, claim, join, since: bench.poweredSince.step });
}

/** Words that switch off are believed, wherever they stand in a step that declares nothing. */
export function hearSwitchingOff(bench: Bench, step: ScriptStep): void {
  const isTold = actionsOfStep(bench.facts, step.id).some(isSwitchingOff);
  if (step.facts.power === null && isTold) bench.isToldOff = true;
}

const hotWork: ReadonlySet<ActionKind> = new Set(['solder', 'desolder', 'crimp', 'strip']);

/** Follows the words of the step: what they switch, and what they tell to do while the power is on. */
export function workAsTold(bench: Bench, step: ScriptStep): void {
  const actions = actionsOfStep(bench.facts, step.id);
  const declared = step.facts.power?.value ?? null;
  if (declared !== null && (declared.during === 'off' || declared.after === 'off')) return;
  let isWorking = false;
  for (const action of actions) {
    if (isSwitchingOff(action)) {
      bench.readPoweredSince = null;
      continue;
    }
    const since = bench.isToldOff ? bench.readPoweredSince : (bench.poweredSince ?? bench.readPoweredSince);
    if (since !== null && !isWorking && isHotWork(bench, action)) {
      isWorking = true;
      stopAtWork(bench, step, action, since);
    }
    if (declared === null && isSwitchingOn(bench, action)) bench.readPoweredSince ??= sinceRead(step, action);
  }
}

/** Work that a declared fact already stops is not stopped twice, nor is work in the step that only its words switch on. */
function stopAtWork(bench: Bench, step: ScriptStep, action: Action, since: PoweredSince): void {
  const isStopped = bench.stops.some((stop) => stop.kind === 'powered-while-working' && stop.step === step.id);
  if (isStopped || (since.step === step.id && since.claim.basis === 'read')) return;
  const claim: Claim<Action> = { value: action, basis: 'read', places: [action.place], confidence: 0.7 };
  bench.stops.push({
    kind: 'told-to-work-under-power',
    step: step.id,
    claim,
    action,
    since: since.step,
    on: since.claim,
  });
}

function isHotWork(bench: Bench, action: Action): boolean {
  if (action.told !== 'do' || !hotWork.has(action.kind)) return false;
  return !/^\W*(?:if|when|should|in case|unless|later|before)\b/i.test(sentenceAround(bench.build, action.place));
}

function isSwitchingOff({ kind, told }: Action): boolean {
  return told !== 'not' && (kind === 'unplug' || kind === 'switch-off');
}

const supplies =
  /\b(?:usb|power|supply|adapter|adaptor|batter(?:y|ies)|cells?|mains|wall|charger|lipo|circuit|board)\b/i;
const otherThings =
  /\b(?:iron|station|gun|printer|drill|meter|multimeter|scope|oscilloscope|laser|saw|computer|laptop|pc|light|lamp|led|wi-?fi|bluetooth)\b|^\W*(?:if|when|should|before|once|after)\b/i;

/** A cell that goes in and a plug that meets its supply are the circuit's power; a soldering iron's is not. */
function isSwitchingOn(bench: Bench, action: Action): boolean {
  if (action.told !== 'do' || (action.kind !== 'switch-on' && action.kind !== 'plug-in')) return false;
  const sentence = sentenceAround(bench.build, action.place);
  return supplies.test(sentence) && !otherThings.test(sentence);
}

function sinceRead(step: ScriptStep, action: Action): PoweredSince {
  return { step: step.id, claim: { value: action, basis: 'read', places: [action.place], confidence: 0.7 } };
}
