import { plainForm } from './plainForm.ts';
import { powerPinOf } from './powerPin.ts';

/**
 * A pin's name by the scheme it belongs to: `digital` and `analogue` are labels of a board (D5, A0), `gpio` and `port`
 * numbers of a chip (GPIO5, PA5), `number` a bare number (in code the chip's or the board's, on a part the physical
 * pin), `power` a supply, `named` anything else. `text` is the pin as written, without what surrounds it.
 */
export interface PinName {
  readonly family: 'digital' | 'analogue' | 'gpio' | 'port' | 'number' | 'power' | 'named';
  readonly number: number | null;
  /** The letter or number of a port, such as `A` of PA5. */
  readonly port: string | null;
  readonly text: string;
}

/** Longer names are read by their beginning. */
const longest = 64;

/** Reads the name of a pin. Every text has a reading; what fits no scheme is `named`. */
export function parsePin(text: string): PinName {
  const written = stripped(text.slice(0, longest));
  const name = plainForm(written).toUpperCase();
  const power = powerPinOf(name) !== null;
  if (power) return { family: 'power', number: null, port: null, text: written };
  for (const [family, pattern] of patterns) {
    const parts = pattern.exec(name)?.groups;
    if (parts !== undefined) {
      return { family, number: Number(parts.number), port: parts.port ?? null, text: written };
    }
  }
  return { family: 'named', number: null, port: null, text: written };
}

const patterns: readonly (readonly [PinName['family'], RegExp])[] = [
  ['number', /^#? ?(?<number>\d{1,3})$/u],
  ['digital', /^D_?(?<number>\d{1,3})$/u],
  ['analogue', /^(?:PIN_)?A_?(?<number>\d{1,2})$/u],
  ['gpio', /^(?:GPIO(?:_NUM_|[ _.-])?|IO_?|GP)(?<number>\d{1,3})$/u],
  ['port', /^P(?<port>[A-K])_?(?<number>\d{1,2})$/u],
  ['port', /^P(?<port>\d)[._](?<number>\d{1,2})$/u],
];

/** The name without quotes, backticks, the word pin, or the board object that Python code takes it from. */
function stripped(text: string): string {
  return (
    text
      .trim()
      .replace(/^([`"'])(.*)\1$/su, '$2')
      .replace(/^(?:pin\s+|pin(?=\d)|(?:Pin\.)?board\.)/iu, '')
      // Boards print a tilde before a pin that can dim.
      .replace(/^~(?=D?\d+$)/iu, '')
      .trim()
  );
}
