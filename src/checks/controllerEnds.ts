import type { Judged } from '#core/assembled.ts';
import type { Basis } from '#core/claim.ts';
import { type Endpoint, endpointId } from '#core/connection.ts';
import type { DrivenPin } from '#core/facts.ts';
import type { Ref } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { parsePin } from '#notation/pins.ts';
import { refClass } from '#notation/refs.ts';
import { netsOf } from '#rehearsal/nets.ts';

/** A wire with where it is written and how it came to be known. */
export interface KnownWire {
  readonly from: Endpoint;
  readonly to: Endpoint;
  readonly net: string | null;
  readonly note: string | null;
  readonly basis: Basis;
  readonly place: Place | null;
}

/** A signal pin of a board that wires reach, with the words that tell what it is for. */
export interface ControllerEnd {
  readonly end: Endpoint;
  readonly words: ReadonlySet<string>;
  readonly wires: readonly KnownWire[];
}

/** The wires of the build: the wiring table, else what steps declare, else what the text says in passing. */
export function knownWires({ build, facts }: Judged): KnownWire[] {
  if (build.connections.length > 0) {
    return build.connections.map((row) => ({ ...row, basis: 'declared', place: row.place }));
  }
  const joins = Object.values(facts.steps).flatMap(({ connects }) => connects);
  const declared = joins.filter(({ basis }) => basis === 'declared');
  const spoken = declared.length > 0 ? declared : joins;
  const wires: KnownWire[] = spoken.map(({ value, basis, places }) => ({
    from: value.from,
    to: value.to,
    net: null,
    note: null,
    basis,
    place: places[0] ?? null,
  }));
  if (wires.length > 0) return wires;
  return facts.pins.flatMap(({ value, basis, places }) =>
    value.other === null
      ? []
      : [{ from: value.end, to: value.other, net: null, note: null, basis, place: places[0] ?? null }],
  );
}

/** The signal pins of a board that wires reach. Supply pins tell nothing of what code drives. */
export function controllerEnds(judged: Judged, ref: Ref, wires: readonly KnownWire[]): ControllerEnd[] {
  const ends = new Map<string, Endpoint>();
  for (const end of wires.flatMap(({ from, to }) => [from, to])) {
    if (end.ref.toUpperCase() === ref.toUpperCase() && parsePin(end.pin).family !== 'power')
      ends.set(endpointId(end), end);
  }
  const nets = netsOf(wires);
  return [...ends.values()].map((end) => {
    const here = wires.filter(({ from, to }) => [from, to].some((one) => endpointId(one) === endpointId(end)));
    const reached = nets.endsOn(end).flatMap((one) => [one, ...beyondResistor(one, wires).flatMap(nets.endsOn)]);
    const names = reached.flatMap((one) => nets.namesAt(one));
    const others = reached.filter((one) => one.ref.toUpperCase() !== ref.toUpperCase());
    const texts = [
      ...names,
      ...here.map(({ note }) => note ?? ''),
      ...others.flatMap((one) => wordsOfEnd(judged, one)),
    ];
    return { end, words: new Set(texts.flatMap(nameWords)), wires: here };
  });
}

/** A resistor in series does not change what a line is for. */
function beyondResistor(end: Endpoint, wires: readonly KnownWire[]): Endpoint[] {
  if (refClass(end.ref) !== 'resistor') return [];
  const legs = wires.flatMap(({ from, to }) => [from, to]).filter(({ ref }) => ref === end.ref);
  return legs.filter((leg) => endpointId(leg) !== endpointId(end) && parsePin(leg.pin).family !== 'power');
}

function wordsOfEnd({ build }: Judged, { ref, pin }: Endpoint): string[] {
  const part = build.parts.find(({ refs }) => refs.includes(ref.toUpperCase()));
  return [ref, pin, part?.description ?? ''];
}

/**
 * Words of a name in code, a net or a description: RING_PIN, ringPin and 'LED ring' hold `ring`. A number stays with
 * its word (LED_1 is `led1`); words that say only that something is a pin are left out.
 */
export function nameWords(name: string): string[] {
  return name
    .replace(/([\p{Ll}\d])(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/(\p{L})_?(\d+)(?![\p{L}\d])/gu, '$1$2')
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word.length > 1 && !/^\d+$/.test(word) && !idle.has(word));
}

const idle = new Set(
  'pin pins gpio io num port data din dout signal sig line in out input output the of for to and with a an k c my board module controller wire net dig digital analog analogue'.split(
    ' ',
  ),
);

/** Words that tell what a pin in code is for: of its name, and of its line on a bus. */
export function wordsOfDriven(pin: DrivenPin): string[] {
  const words = new Set(pin.name === null ? [] : nameWords(pin.name));
  if (pin.uses.includes('i2c-sda')) words.add('sda');
  if (pin.uses.includes('i2c-scl')) words.add('scl');
  return [...words];
}

/** analogRead(0) means A0 on some boards and pin 0 on others: nobody can tell without the board. */
export function isUncertainAnalogue({ pin, uses }: DrivenPin): boolean {
  return uses.includes('analogue-in') && /^\d$/.test(pin.trim());
}
