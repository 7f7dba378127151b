import type { ActionKind } from '#core/action.ts';
import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Controller } from '#core/facts.ts';
import type { Place } from '#core/place.ts';
import type { Proposal } from '#core/proposal.ts';
import type { FactLabel, StepFacts, StepId } from '#core/step.ts';
import type { Saying } from './stepTalk.ts';

/** Code to load, power switched and times told, for steps that do not declare them. */
export function proposeStates(
  build: Build,
  steps: Readonly<Record<StepId, StepFacts>>,
  controllers: readonly Claim<Controller>[],
  talk: ReadonlyMap<StepId, readonly Saying[]>,
): Proposal[] {
  const code = codeToLoad(build, controllers);
  return [...talk].flatMap(([step, sayings]) => {
    const facts = steps[step];
    return [
      ...(facts?.loads.length === 0 && code !== null ? loadTold(step, sayings, code) : []),
      ...(facts?.power === null ? powerTold(step, sayings) : []),
      ...(facts?.minutes === null ? timeTold(step, sayings) : []),
    ];
  });
}

interface Code {
  readonly item: string;
  readonly path: string;
}

/** The one program of the build: its file, or the folder that holds all of its files. */
function codeToLoad({ sources }: Build, controllers: readonly Claim<Controller>[]): Code | null {
  const [first, ...others] = sources.map(({ file }) => file);
  if (first === undefined) return null;
  const path = others.length === 0 ? first : commonFolder([first, ...others]);
  const only = controllers.length === 1 ? controllers[0]?.value.ref : undefined;
  return path === '' || /[\s,;→]/.test(path) ? null : { path, item: only === undefined ? path : `${path} → ${only}` };
}

function commonFolder(files: readonly string[]): string {
  const folders = files.map((file) => file.split('/').slice(0, -1));
  const [first = []] = folders;
  const depth = first.findIndex((name, at) => folders.some((folder) => folder[at] !== name));
  return (depth < 0 ? first : first.slice(0, depth)).join('/');
}

function loadTold(step: StepId, sayings: readonly Saying[], { item, path }: Code): Proposal[] {
  const told = workOf(sayings, ['load-code']);
  const [first] = told;
  if (first === undefined) return [];
  const why = `“${first.verb}” tells to load code, and ${path} is the only code of the build.`;
  return [
    proposal(
      step,
      'code',
      item,
      0.8,
      told.map(({ place }) => place),
      why,
      `code:${path}`,
    ),
  ];
}

/** The last switching that a step tells of decides how it ends. */
function powerTold(step: StepId, sayings: readonly Saying[]): Proposal[] {
  const told = workOf(sayings, ['switch-on', 'plug-in', 'switch-off', 'unplug']).filter(
    ({ kind, verb }) => kind !== 'plug-in' || /\bin\b|power|usb|batter/i.test(verb),
  );
  const states = told.map(({ kind }) => (kind === 'switch-on' || kind === 'plug-in' ? 'on' : 'off'));
  const [first] = states;
  const last = states.at(-1);
  const [witness] = told;
  if (first === undefined || last === undefined || witness === undefined) return [];
  const item = first === last ? (first === 'on' ? 'off → on' : 'on → off') : last === 'on' ? 'on' : 'off';
  if (item === 'on' || item === 'off') return [];
  const why = `“${witness.verb}” tells that the power is switched ${last} here.`;
  return [
    proposal(
      step,
      'power',
      item,
      0.65,
      told.map(({ place }) => place),
      why,
      null,
    ),
  ];
}

const duration =
  /(?:\b(?:about|around|roughly|approximately|another|for|takes?|allow|at least)\s+)(?:(?:about|around|at least|roughly)\s+)?(\d+(?:[.,]\d+)?)(?:\s?(?:-|–|to)\s?(\d+))?\s?(min(?:ute)?s?|h(?:our)?s?|days?)\b|\b(overnight)\b/iu;
const waiting = /\b(?:wait|leave|let|dry|dries|cure|cures|cool|cools|set|sets|charge|rest|soak|warm)\b/iu;
const working = /\b(?:takes?|takes you|allow|step|work|spend)\b/iu;

function timeTold(step: StepId, sayings: readonly Saying[]): Proposal[] {
  for (const saying of sayings) {
    if (saying.kind === 'picture') continue;
    const match = duration.exec(saying.text);
    if (match === null) continue;
    const isWait = match[4] !== undefined || waiting.test(saying.text);
    if (!isWait && !working.test(saying.text)) continue;
    const amount = match[4] !== undefined ? '12 h' : `${match[2] ?? match[1]} ${unitOf(match[3] ?? '')}`;
    const place = saying.placeOf(match.index, match.index + match[0].length);
    const why = `“${match[0].trim()}” tells how long ${isWait ? 'to wait' : 'it takes'}.`;
    return [proposal(step, 'time', isWait ? `${amount} wait` : amount, isWait ? 0.65 : 0.7, [place], why, null)];
  }
  return [];
}

function unitOf(word: string): string {
  return /^m/i.test(word) ? 'min' : /^h/i.test(word) ? 'h' : 'days';
}

function workOf(sayings: readonly Saying[], kinds: readonly ActionKind[]) {
  return sayings.flatMap(({ work, isAside }) => (isAside ? [] : work.filter(({ kind }) => kinds.includes(kind))));
}

function proposal(
  step: StepId,
  label: FactLabel,
  item: string,
  confidence: number,
  places: readonly Place[],
  why: string,
  about: Proposal['about'],
): Proposal {
  return { step, label, item, about, basis: 'read', confidence, places, why, again: false };
}
