import type { Judged } from '#core/assembled.ts';
import type { Basis } from '#core/claim.ts';
import { type Connection, type Endpoint, endpointId } from '#core/connection.ts';
import type { DrivenPin } from '#core/facts.ts';
import type { Ref } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import { parsePin } from '#notation/pins.ts';
import { refClass } from '#notation/refs.ts';
import { type Nets, netsOf } from '#rehearsal/nets.ts';
import table from './pinWords.json';

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
export function knownWires({ build, facts }: Judged): readonly KnownWire[] {
  if (build.connections.length > 0) return tabledWires(build.connections);
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

const tabledWires = rememberFor((connections: readonly Connection[]): readonly KnownWire[] =>
  connections.map((row) => ({ ...row, basis: 'declared', place: row.place })),
);

/** The signal pins of a board that wires reach. Supply pins tell nothing of what code drives. */
export function controllerEnds(judged: Judged, ref: Ref, wires: readonly KnownWire[]): ControllerEnd[] {
  const ends = new Map<string, Endpoint>();
  for (const end of wires.flatMap(({ from, to }) => [from, to])) {
    if (end.ref.toUpperCase() === ref.toUpperCase() && !isSupply(end)) ends.set(endpointId(end), end);
  }
  const nets = netsOf(wires);
  return [...ends.values()].map((end) => {
    const here = wires.filter(({ from, to }) => [from, to].some((one) => endpointId(one) === endpointId(end)));
    const reached = reachedFrom(end, wires, nets);
    const others = reached.filter((one) => one.ref.toUpperCase() !== ref.toUpperCase());
    const names = [
      ...reached.flatMap((one) => nets.namesAt(one)),
      ...here.map(({ note }) => note ?? ''),
      ...others.flatMap((one) => [one.ref, `x ${one.pin}`]),
    ];
    const described = others.flatMap((one) => descriptionOf(judged, one));
    const words = [...names.flatMap(nameWords), ...described.flatMap(nameWords).filter((word) => word.length > 1)];
    return { end, words: new Set(words), wires: here };
  });
}

/** Parts that a line may pass one after the other. */
const longestWay = 4;

/** Everything that the line from a pin comes to, through resistors, buffers, level shifters and switching transistors. */
function reachedFrom(end: Endpoint, wires: readonly KnownWire[], nets: Nets): Endpoint[] {
  const all = wires.flatMap(({ from, to }) => [from, to]);
  const reached = new Map<string, Endpoint>();
  let front = [end];
  for (let way = 0; way <= longestWay && front.length > 0; way++) {
    const here = front.flatMap((one) => nets.endsOn(one)).filter((one) => !reached.has(endpointId(one)));
    for (const one of here) reached.set(endpointId(one), one);
    front = here
      .flatMap((one) => all.filter((other) => passesOn(one, other) && !reached.has(endpointId(other))))
      // A pull-up ends at a rail, where all lines meet.
      .filter((one) => !nets.endsOn(one).some(isSupply));
  }
  return [...reached.values()];
}

/** Pins between which a part passes a signal on: both ends of a resistor, 1A and 1Y, A1 and B1, gate and drain. */
function passesOn(a: Endpoint, b: Endpoint): boolean {
  if (a.ref !== b.ref || endpointId(a) === endpointId(b)) return false;
  const kind = refClass(a.ref);
  if (kind === 'resistor') return true;
  return (kind === 'transistor' ? transistorWays : ways).some((way) => isWay(way, a, b) || isWay(way, b, a));
}

type Way = readonly [into: RegExp, out: RegExp];

/** Names of what goes in and what comes out of one channel of gates and level shifters (common practice). */
const ways: readonly Way[] = [
  [/^(\d)A$/, /^(\d)Y$/],
  [/^A(\d)$/, /^[BY](\d)$/],
  [/^LV(\d)$/, /^HV(\d)$/],
  [/^D?IN(\d?)$/, /^D?OUT(\d?)$/],
];

const transistorWays: readonly Way[] = [
  [/^(?:G|GATE)$/, /^(?:D|DRAIN)$/],
  [/^(?:B|BASE)$/, /^(?:C|COLLECTOR)$/],
];

function isWay([into, out]: Way, a: Endpoint, b: Endpoint): boolean {
  const entry = into.exec(a.pin.toUpperCase());
  const exit = out.exec(b.pin.toUpperCase());
  return entry !== null && exit !== null && (entry[1] ?? '') === (exit[1] ?? '');
}

function isSupply({ pin }: Endpoint): boolean {
  return parsePin(pin).family === 'power';
}

function descriptionOf({ build }: Judged, { ref }: Endpoint): string[] {
  return build.parts.filter(({ refs }) => refs.includes(ref.toUpperCase())).map(({ description }) => description);
}

/**
 * Words of a name in code, a net or a description: RING_PIN, ringPin and 'LED ring' hold `ring`. A number stays with
 * its word (LED_1 is `led1`), a single letter counts after a word (ENCODER_A), words for one thing are one, and
 * words that say only that something is a pin are left out.
 */
export function nameWords(name: string): string[] {
  const words = name
    .replace(/([\p{Ll}\d])(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/(\p{L})_?(\d+)(?![\p{L}\d])/gu, '$1$2')
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== '');
  return words
    .filter((word, at) => (word.length > 1 || at > 0) && !/^\d+$/.test(word) && !idle.has(word))
    .map((word) => alike.get(word) ?? word);
}

const idle = new Set(table.idle);
const alike = new Map(table.alike.flatMap((words) => words.map((word) => [word, words[0] ?? word] as const)));

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

/** A name that stands for several pins is chosen when the code is compiled; which of them, nobody can tell here. */
export function isChosenByBoard<T extends { readonly name: string | null; readonly pin: string; readonly ref?: Ref }>(
  pin: T,
  all: readonly T[],
): boolean {
  return pin.name !== null && all.some((one) => one.name === pin.name && one.pin !== pin.pin && one.ref === pin.ref);
}
