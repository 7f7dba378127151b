import table from './knowledge/chipAddresses.json';

/** A chip on the I²C bus with the 7-bit addresses that it can have. */
export interface Chip {
  readonly name: string;
  readonly addresses: readonly number[];
  /** The address at which boards with it are sold; null where that varies. */
  readonly ships: number | null;
}

interface Row {
  readonly names: readonly string[];
  readonly addresses: readonly string[];
  readonly ships?: string;
}

const rows = table.chips as readonly Row[];
const chips = rows.map(({ names, addresses, ships }) => ({
  chip: { name: names[0] ?? '', addresses: addresses.map(Number), ships: ships === undefined ? null : Number(ships) },
  pattern: new RegExp(`(?<![\\p{L}\\d])(?:${names.join('|')})(?!\\d)`, 'iu'),
}));

/** The chips that a text names. `ADAFRUIT_BME280` names one, `BME2801` none. */
export function chipsOf(text: string): Chip[] {
  const plain = text.replace(/_/gu, ' ');
  const found = chips.filter(({ pattern }) => pattern.test(plain)).map(({ chip }) => chip);
  // PCF8574A has other addresses than PCF8574, whose name it begins with.
  return found.filter(({ name }) => !(name === 'PCF8574' && /PCF8574A/iu.test(plain)));
}

/** The one chip that a text names; null for none and for several. */
export function chipNamedIn(text: string): Chip | null {
  const [only, another] = chipsOf(text);
  return another === undefined ? (only ?? null) : null;
}

/** A number as code writes it; null for anything else. */
export function numberOf(value: string): number | null {
  const n = Number(value.replace(/[uUlL]+$/u, ''));
  return Number.isInteger(n) ? n : null;
}
