import type { Endpoint } from '#core/connection.ts';
import { isRef } from './parseRefs.ts';

/** Longer texts are no end of a wire. */
const longest = 120;

/**
 * An end of a wire in running text: `U1.D5`, `U1 pin 5` or `BT1+`, where the reference is a known one in upper case;
 * `M2.5` is no pin unless there is an M2. The pin is kept as written; a note in brackets after it is passed over. Null for anything else.
 */
export function parseEndpoint(text: string, knownRefs: ReadonlySet<string>): Endpoint | null {
  return endOf(text, [dotted, worded, poled], (ref) => knownRefs.has(ref.toUpperCase()));
}

/**
 * An end of a wire in a wiring table, where every cell is one: `U1.D5`, `U1:D5`, `U1 pin 5`, `U1 D5`, `U1-5`, `BT1+`.
 * The last three need the form of a reference, letters and a number. Null for anything else.
 */
export function parseWiringEnd(text: string): Endpoint | null {
  return endOf(text, [dotted, coloned, worded], () => true) ?? endOf(text, [poled, spaced], isRef);
}

const ref = '(?<ref>[\\p{L}_][\\p{L}\\p{N}_-]{0,31})';
// A dash or arrow within a name would be the separator of a pair; at its end it is the pole of a battery.
const pin = '(?<pin>[^\\s,;→↔–—−]{0,31}[^\\s,;→↔])';
const dotted = new RegExp(`^${ref}\\.(?:pin\\s+)?${pin}$`, 'iu');
const coloned = new RegExp(`^${ref}\\s?:\\s?${pin}$`, 'iu');
const worded = new RegExp(`^${ref}[\\s,]{1,3}pin\\s{1,3}${pin}$`, 'iu');
const poled = new RegExp(`^${ref}\\s?(?<pin>[+−-])$`, 'iu');
const spaced = new RegExp(`^${ref}(?:\\s{1,3}|-)${pin}$`, 'iu');

function endOf(text: string, forms: readonly RegExp[], fits: (ref: string) => boolean): Endpoint | null {
  if (text.length > longest) return null;
  const withoutNote = text.trim().replace(/ +\([^()]*\)$/u, '');
  const plain = withoutNote.replace(/^`(.*)`$/u, '$1').trim();
  for (const form of forms) {
    const { ref: written = '', pin: name = '' } = form.exec(plain)?.groups ?? {};
    const tidy = name.replace(/(?<=.)[.:!?]$/u, '');
    if (written !== '' && isPinName(tidy) && fits(written)) return { ref: written.toUpperCase(), pin: tidy };
  }
  return null;
}

function isPinName(name: string): boolean {
  return name !== '' && !name.endsWith('.') && !name.includes('->') && name.toLowerCase() !== 'pin';
}
