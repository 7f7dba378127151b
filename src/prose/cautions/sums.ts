import { firstValue } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import type { Quantity, QuantityKind } from '#core/quantity.ts';
import { remember } from '#core/remember.ts';
import { refClass } from '#notation/refs.ts';
import { findQuantities } from '#notation/value.ts';
import electricity from './library/electricity.json';
import light from './library/light.json';
import { phrasesOf } from './phrases.ts';
import { type Scene, type Sighting, sightingsOfPart, wordsOfPart } from './sightings.ts';

/** Finds hazards that only numbers give away, by the name that the library calls the sum. */
export const sums: Readonly<Record<string, (scene: Scene) => Sighting[]>> = {
  'charged-capacitor': chargedCapacitors,
  'voltage-above-touch': voltagesAboveTouch,
  'live-and-neutral': liveAndNeutral,
  'unfused-source': unfusedSources,
  'laser-above-3r': (scene) => lasers(scene, (watts) => watts > light.limits.class3rMaxW),
  'laser-3r': (scene) => lasers(scene, (watts) => watts > light.limits.class2MaxW && watts <= light.limits.class3rMaxW),
  'fast-flashes': fastFlashes,
};

/** Energy in joules that a capacitor holds at a voltage: ½CV². */
export function storedEnergy(farads: number, volts: number): number {
  return (farads * volts ** 2) / 2;
}

/** Whether a charge is dangerous to touch: it takes a high voltage and enough energy together. */
export function isDangerousCharge(farads: number, volts: number): boolean {
  const { storedV, storedJ } = electricity.limits;
  return volts >= storedV && storedEnergy(farads, volts) >= storedJ;
}

/** How dangerous a voltage is to touch, dry: not, above touch, or outside extra-low voltage. */
export function touchOf(volts: number, current: 'ac' | 'dc'): 'harmless' | 'dangerous' | 'as mains' {
  const { basicProtectionAcV, basicProtectionDcV, extraLowAcV, extraLowDcV } = electricity.limits;
  const [touch, extraLow] = current === 'ac' ? [basicProtectionAcV, extraLowAcV] : [basicProtectionDcV, extraLowDcV];
  return volts > extraLow ? 'as mains' : volts > touch ? 'dangerous' : 'harmless';
}

/** A rating alone does not put that voltage there: the hazard is certain only where something declares such a voltage. */
function chargedCapacitors(scene: Scene): Sighting[] {
  const basis = isHighVoltageDeclared(scene) ? 'declared' : 'read';
  return scene.build.parts.flatMap((part) => {
    if (!part.fitted || !isCapacitor(part)) return [];
    const farads = largest(part, 'capacitance');
    const volts = largest(part, 'voltage');
    if (farads === null || volts === null || !isDangerousCharge(farads, volts)) return [];
    const joules = storedEnergy(farads, volts).toPrecision(3);
    const why = `the capacitor ‘${part.description}’, which can hold ${joules} J at ${volts} V`;
    return sightingsOfPart(part, scene, why).map((sighting) => ({ ...sighting, basis }));
  });
}

function isHighVoltageDeclared(scene: Scene): boolean {
  const supply = scene.build.settings.supply ?? '';
  const readings = [...voltagesAboveTouch(scene), ...liveAndNeutral(scene)];
  return voltageIn(supply) !== null || readings.some(({ basis }) => basis === 'declared');
}

function isCapacitor({ refs, description }: Part): boolean {
  return refs.some((ref) => refClass(ref) === 'capacitor') || /\bcapacitor/i.test(description);
}

/** Voltages that the guide lets somebody read, or that nets are named for; ratings of parts are no voltages that are there. */
function voltagesAboveTouch(scene: Scene): Sighting[] {
  const { build, steps, sentences } = scene;
  const measured = Object.entries(steps).flatMap(([step, { measures }]) =>
    measures.flatMap(({ value, basis, places }): Sighting[] => {
      const place = places[0];
      const words = voltageIn(value.text);
      if (place === undefined || words === null) return [];
      return [{ place, step, basis, as: 'head', why: `a reading of ${words}` }];
    }),
  );
  const told = sentences.flatMap(({ words, place, step, isHeading }): Sighting[] => {
    const found = readingIn(words);
    return found === null
      ? []
      : [{ place, step, basis: 'read', as: isHeading ? 'head' : 'act', why: `a reading of ${found}` }];
  });
  const nets = build.connections.flatMap(({ net, place, cells }): Sighting[] => {
    const volts = Number(/^\+?(\d{2,4})\s?V(?:DC)?$/i.exec(net?.trim() ?? '')?.[1] ?? 0);
    if (touchOf(volts, 'dc') === 'harmless') return [];
    return [{ place: cells.net ?? place, step: null, basis: 'declared', as: 'list', why: `the net ‘${net}’` }];
  });
  return [...nets, ...measured, ...told];
}

/** A voltage above what may be touched, as a sentence lets somebody read it. */
const readingIn = remember((words): string | null =>
  !reads.test(words) || ratings.test(words) || supplyIn.test(words) ? null : voltageIn(words),
);

const reads =
  /\b(?:reads?|measures?|expect|should (?:be|show|read|see)|multimeter|outputs?|gives?|supplies|set .* to|adjust)\b/i;
const ratings = /\b(?:rated|rating|withstand|working voltage|up to|at least|or more|insulat\w+|category|CAT)\b/i;
/** 'works from 100–240 V' is what a bought supply takes in. */
const supplyIn = /\b(?:adapter|adaptor|charger|plug-in|wall wart|input range|mains)\b/i;

function voltageIn(words: string): string | null {
  const isAc = /\bV(?:\s?AC|rms)\b|\bAC\b|~/.test(words);
  const found = findQuantities(words.replace(/\bV(?:AC|DC)\b/g, 'V')).find(
    ({ quantity: { kind, si } }) => kind === 'voltage' && touchOf(Math.abs(si), isAc ? 'ac' : 'dc') !== 'harmless',
  );
  return found?.quantity.text.trim() ?? null;
}

/** A part with a pin for the live and one for the neutral conductor. */
function liveAndNeutral({ build: { connections } }: Scene): Sighting[] {
  const pins = new Map<string, Set<string>>();
  for (const { from, to } of connections)
    for (const { ref, pin } of [from, to]) pins.set(ref, (pins.get(ref) ?? new Set()).add(pin.toUpperCase()));
  const both = [...pins].filter(
    ([, names]) => (names.has('L') && names.has('N')) || (names.has('LIVE') && names.has('NEUTRAL')),
  );
  return both.flatMap(([ref]) => {
    const row = connections.find(({ from, to }) =>
      [from, to].some((end) => end.ref === ref && /^(?:L|LIVE)$/i.test(end.pin)),
    );
    if (row === undefined) return [];
    const why = `the pins for live and neutral of ${ref}`;
    return [{ place: row.place, step: null, basis: 'declared', as: 'list', why, names: [ref] }];
  });
}

const strong = phrasesOf([
  'lead acid',
  'car battery',
  'motorcycle battery',
  'agm battery',
  'sla battery',
  'lipo pack',
  'li po pack',
  'li ion pack',
  'battery pack + lithium',
  'lifepo4 battery',
]);
const source = /\b(?:supply|power supply|battery|pack|psu)\b/i;
const fused =
  /\b(?:fuses?|polyfuse|pptc|ptc|circuit breaker|bms|protected|protection circuit|current[- ]limit\w*|short[- ]circuit[- ]proof)\b/i;

/** Sources that can drive a strong current, in a build that lists no fuse. */
function unfusedSources(scene: Scene): Sighting[] {
  const { parts, instructions } = scene.build;
  const isFused =
    parts.some((part) => part.refs.some((ref) => refClass(ref) === 'fuse') || fused.test(wordsOfPart(part))) ||
    scene.sentences.some(({ words }) => /\bfuse\b/i.test(words)) ||
    instructions.sections.length === 0;
  if (isFused) return [];
  return parts
    .filter((part) => part.fitted && isStrongSource(part))
    .flatMap((part) => sightingsOfPart(part, scene, `the source ‘${part.description}’, with no fuse in the list`));
}

function isStrongSource(part: Part): boolean {
  const words = wordsOfPart(part);
  if (strong.find(words) !== null) return true;
  return source.test(part.description) && (largest(part, 'current') ?? 0) >= electricity.limits.strongSourceA;
}

/** Lasers by the power in their row. A printed class is looked for as words. */
function lasers(scene: Scene, isOfClass: (watts: number) => boolean): Sighting[] {
  const harmless =
    /\b(?:laser[- ]?(?:cut\w*|engrav\w*|print\w*)|time[- ]of[- ]flight|tof|ranging|vl53\w*|class (?:1|2|3r|3b|4|ii|iiia?|iv))\b/i;
  return scene.build.parts.flatMap((part) => {
    const words = wordsOfPart(part);
    if (!part.fitted || !/\blaser\b/i.test(words) || harmless.test(words)) return [];
    const watts = largest(part, 'power');
    return watts !== null && isOfClass(watts) ? sightingsOfPart(part, scene) : [];
  });
}

function fastFlashes({ sentences }: Scene): Sighting[] {
  const rate =
    /\b(?:flash|blink|strobe|flicker)\w*\b[^.]{0,40}?\b(\d+)\s*(?:times|flashes)\s*(?:a|per|every|each)\s*second|\b(\d+)\s*flashes\s*(?:a|per)\s*second/i;
  return sentences.flatMap(({ words, place, step, isHeading }): Sighting[] => {
    const match = rate.exec(words);
    if (match === null || Number(match[1] ?? match[2]) <= light.limits.flashesPerSecond) return [];
    return [{ place, step, basis: 'read', as: isHeading ? 'head' : 'act', why: `the words ‘${match[0]}’` }];
  });
}

function largest(part: Part, kind: QuantityKind): number | null {
  const value = firstValue(part.value);
  const stated: Quantity[] = [...(value === undefined ? [] : [value]), ...part.ratings];
  const described = findQuantities(`${part.description}. ${part.note ?? ''}`).map(({ quantity }) => quantity);
  const all = [...stated, ...described].filter((quantity) => quantity.kind === kind).map(({ si }) => si);
  return all.length === 0 ? null : Math.max(...all);
}
