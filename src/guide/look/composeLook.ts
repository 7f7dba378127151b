import { type PartKind, partKind } from '#checks/partKind.ts';
import type { Part } from '#core/part.ts';
import { refClass } from '#notation/refs.ts';
import type { PartLook } from '../guide.ts';
import { type Described, describe, says } from './described.ts';
import { lookOfCapacitor } from './lookOfCapacitor.ts';
import { lookOfConnector } from './lookOfConnector.ts';
import { lookOfPotentiometer, lookOfResistor } from './lookOfResistor.ts';
import { lookOfChip, lookOfDiode, lookOfLed, lookOfTransistor } from './lookOfSemiconductor.ts';
import {
  lookOfBattery,
  lookOfCrystal,
  lookOfFuse,
  lookOfInductor,
  lookOfPlate,
  lookOfRing,
  lookOfScrew,
  lookOfSwitch,
} from './lookOfThing.ts';
import { formed } from './signs.ts';

/**
 * How a part is found in the bag, from what its row says. `bands` are the colours that the guide's own text tells of
 * it. Null where nothing is known; what the row's own note says already is not said again.
 */
export function composeLook(part: Part, bands: readonly string[] | null): PartLook | null {
  const kind = partKind(part);
  const described = describe(part, bands);
  const look = lookOfRing(described) ?? (kind === null ? null : (looks[kind]?.(described) ?? null));
  return look === null ? null : { ...look, signs: look.signs.filter(({ words }) => !isNoted(words, part.note)) };
}

/** A chip by its reference, where its description has no noun for that. */
function isChip({ part }: Described): boolean {
  const [ref] = part.refs;
  return ref !== undefined && refClass(ref) === 'ic';
}

const looks: Partial<Record<PartKind, (part: Described) => PartLook | null>> = {
  resistor: lookOfResistor,
  potentiometer: lookOfPotentiometer,
  capacitor: lookOfCapacitor,
  inductor: lookOfInductor,
  diode: lookOfDiode,
  led: lookOfLed,
  transistor: lookOfTransistor,
  chip: lookOfChip,
  fuse: lookOfFuse,
  crystal: lookOfCrystal,
  switch: lookOfSwitch,
  connector: lookOfConnector,
  battery: lookOfBattery,
  module: (part) => lookOfPlate(part, false),
  wire: (part) => (says(part, 'hook[- ]?up|stranded|solid(?:[- ]core)?|litz') ? formed('wire') : null),
  screw: lookOfScrew,
  standoff: () => formed('pillar'),
  nut: (part) => (says(part, 'washer') ? null : formed('nut')),
  other: (part) => {
    const [head = ''] = part.part.description.split(/[,;(]|\s(?:with|for|of)\s/iu);
    if (/\b(?:perf|strip|proto(?:typing)?)\s?boards?$/iu.test(head.trim())) return lookOfPlate(part, true);
    if (/\b(?:pcb|board)s?$/iu.test(head.trim())) return lookOfPlate(part, false);
    if (isChip(part)) return lookOfChip(part);
    return says(part, 'heat[- ]?shrink') ? formed('tube') : null;
  },
};

/** A note that speaks of the stripe, the longer lead or the print is the maker's own word on it. */
const noteWords = [
  /\bstripe|\bband\b/iu,
  /\blong(?:er|est)? (?:lead|leg)/iu,
  /\bprint(?:ed)?\b|\bmarked\b/iu,
  /\bflat side|\brim\b/iu,
];

function isNoted(sign: string, note: string | null): boolean {
  return note !== null && noteWords.some((word) => word.test(sign) && word.test(note));
}
