import { type PinName, parsePin } from './parsePin.ts';
import { plainForm } from './plainForm.ts';
import { type PowerPin, powerPinOf } from './powerPin.ts';

export type PinComparison = 'same' | 'different' | 'cannot-tell';

/**
 * Whether two names mean the same pin of one part. A chip's number and a bare number are compared by number (GPIO5,
 * IO5, GP5, 5). A board's label is not the chip's number on several boards (D5 is GPIO14 on some), and a signal's
 * name (SDA) may be any pin: there only a table of the board can tell. A label with two names
 * (GPIO21/SDA) is the same pin as either. A supply is no signal pin. Of two supplies,
 * equal volts and the names of ground are the same; ground differs from every rail, and rails of unequal volts differ.
 */
export function comparePins(a: string, b: string): PinComparison {
  const found = new Set(aliasesOf(a).flatMap((one) => aliasesOf(b).map((other) => compareNamed(one, other))));
  return outcomes.find((outcome) => found.has(outcome)) ?? 'cannot-tell';
}

/** From the one that settles the matter to the one that does not. */
const outcomes: readonly PinComparison[] = ['same', 'different', 'cannot-tell'];

/** The names that one label gives a pin: `GPIO21/SDA` and `SDA (GPIO21)` give two each, `IN1/IN2` only itself. */
function aliasesOf(text: string): readonly PinName[] {
  const parts = /^([^\s/()]{2,24})(?: ?\/ ?([^\s/()]{2,24})| ?\(([^\s/()]{2,24})\))$/u.exec(text.trim());
  const [one, other] = [parsePin(parts?.[1] ?? ''), parsePin(parts?.[2] ?? parts?.[3] ?? '')];
  const isPair = one.family !== other.family && (signals.has(one.family) || signals.has(other.family));
  return isPair ? [one, other] : [parsePin(text)];
}

function compareNamed(one: PinName, other: PinName): PinComparison {
  if (plainName(one) === plainName(other)) return plainName(one) === '' ? 'cannot-tell' : 'same';
  if (one.family === 'power' && other.family === 'power') return comparePower(one, other);
  if (one.family === 'power' || other.family === 'power') {
    return signals.has(one.family) || signals.has(other.family) ? 'different' : 'cannot-tell';
  }
  if (one.family === 'named' && other.family === 'named') return compareNames(plainName(one), plainName(other));
  if (one.family === other.family || (isChipNumber(one) && isChipNumber(other))) {
    return one.number === other.number && one.port === other.port ? 'same' : 'different';
  }
  return 'cannot-tell';
}

const signals: ReadonlySet<PinName['family']> = new Set(['digital', 'analogue', 'gpio', 'port']);

/** Lines of the usual buses: each is another pin than the others of its bus. */
const buses: readonly (readonly string[])[] = [
  ['SDA', 'SCL'],
  ['TX', 'RX'],
  ['TXD', 'RXD'],
  ['MOSI', 'MISO', 'SCK', 'CS'],
  ['SDI', 'SDO', 'SCK', 'CS'],
  ['BCLK', 'LRCLK', 'DIN'],
  ['ANODE', 'CATHODE'],
  ['GATE', 'DRAIN', 'SOURCE'],
  ['BASE', 'COLLECTOR', 'EMITTER'],
  ['IN', 'OUT'],
  ['DIN', 'DOUT'],
  ['NO', 'NC', 'COM'],
];

function compareNames(a: string, b: string): PinComparison {
  return buses.some((bus) => bus.includes(a) && bus.includes(b)) ? 'different' : 'cannot-tell';
}

function isChipNumber(pin: PinName): boolean {
  return pin.family === 'gpio' || pin.family === 'number';
}

function comparePower(a: PinName, b: PinName): PinComparison {
  const [one, other] = [powerPinOf(plainName(a)), powerPinOf(plainName(b))];
  if (one === null || other === null) return 'cannot-tell';
  if (one.is === 'rail' && other.is === 'rail') return compareRails(one, other);
  if (one.is === 'ground' && other.is === 'ground') return 'same';
  return isPositive(one) !== isPositive(other) ? 'different' : sameName(one, other);
}

function sameName(one: PowerPin, other: PowerPin): PinComparison {
  return one.is === other.is && one.is !== 'supply' && one.is !== 'other-ground' ? 'same' : 'cannot-tell';
}

function compareRails(one: { volts: number }, other: { volts: number }): PinComparison {
  if (one.volts === other.volts) return 'same';
  // The label `3V` stands at the 3.3 V pin of several boards.
  return Math.floor(one.volts) === 3 && Math.floor(other.volts) === 3 ? 'cannot-tell' : 'different';
}

function isPositive(pin: PowerPin): boolean {
  return pin.is === 'rail' || pin.is === 'supply' || pin.is === 'plus';
}

function plainName(pin: PinName): string {
  return plainForm(pin.text).toUpperCase();
}
