import { colourBandsOf, eia96Of, parseColourBands, smdResistorCodeOf, valueBandsOf } from '#notation/codes.ts';
import { formatQuantity } from '#notation/value.ts';
import type { LookSign, PartLook } from '../guide.ts';
import { listed } from '../listed.ts';
import { chipSizeOf, type Described, measureOf, ratingOf, says, toleranceOf } from './described.ts';
import { formed, sure, usual } from './signs.ts';

/** Bands by IEC 60062; what chips carry by the same standard, its annex for three characters, and common practice. */
export function lookOfResistor(part: Described): PartLook | null {
  const ohms = measureOf(part, 'resistance');
  if (says(part, 'photo ?resistor|ldr|light[- ]dependent resistor')) {
    return formed('light-cell', [sure('A winding track shows under its clear face. Either way round is right.')]);
  }
  if (says(part, 'thermistor|ntc|ptc|varistor|shunt|network|array|resistor net')) return null;
  const size = chipSizeOf(part);
  if (size !== null) return ohms === null ? null : chipResistor(part, ohms, size);
  if (says(part, 'smd|smt|chip')) return ohms === null ? null : chipResistor(part, ohms, null);
  if (says(part, 'cement|wire[- ]?wound') || (ratingOf(part, 'power')?.si ?? 0) >= 3) {
    return formed('block', ohms === null ? [] : [usual(`Often printed in full: ${inOhms(ohms)}, with its watts.`)]);
  }
  return ohms === null ? null : banded(part, ohms);
}

function banded(part: Described, ohms: number): PartLook | null {
  if (ohms === 0) return { drawing: { kind: 'banded', bands: ['black'] }, signs: [sure('One black band, a link.')] };
  const told = part.bands;
  const fitting = told === null ? null : toldBands(told, ohms);
  if (fitting !== null) return withBands(fitting);
  const tolerance = toleranceOf(part);
  // The text may leave the last band out; where it says something else than the list, no bands are shown.
  const begins = (bands: readonly string[]) => told === null || told.every((colour, i) => colour === bands[i]);
  if (tolerance === null) return openTolerance(ohms, begins);
  const [four, five, six] = ([4, 5, 6] as const).map((count) => {
    const bands = colourBandsOf(ohms, tolerance, count, tempcoOf(part));
    return bands !== null && begins(bands) ? bands : null;
  });
  const isFine = tolerance < 0.05;
  const bands = six ?? (isFine ? (five ?? four) : (four ?? five));
  if (!bands) return null;
  return withBands(
    bands,
    ...(isFine && bands === five && four ? [usual(`Some makers use four: ${four.join(', ')}.`)] : []),
  );
}

function withBands(bands: readonly string[], ...signs: LookSign[]): PartLook {
  return { drawing: { kind: 'banded', bands }, signs: [sure(bandWords(bands)), ...signs] };
}

/** The guide's own bands from the end that gives the listed value; null where neither does. */
function toldBands(told: readonly string[], ohms: number): readonly string[] | null {
  const ways = [told, [...told].reverse()];
  return (
    ways.find((bands) => {
      const read = parseColourBands(bands)?.value.si;
      return read !== undefined && Math.abs(read - ohms) <= 1e-6 * ohms;
    }) ?? null
  );
}

/** Without a tolerance the last band stays open, and so does how many there are. */
function openTolerance(ohms: number, begins: (bands: readonly string[]) => boolean): PartLook | null {
  const [four, five] = ([2, 3] as const).map((digits) => {
    const bands = valueBandsOf(ohms, digits);
    return bands !== null && begins(bands) ? bands : null;
  });
  const bands = four ?? five;
  if (!bands) return null;
  const ways = [four && `of four bands: ${four.join(', ')}`, five && `of five: ${five.join(', ')}`].filter(
    (way): way is string => Boolean(way),
  );
  return {
    drawing: { kind: 'banded', bands: [...bands, null] },
    signs: [sure(`One ${ways.join('; one ')}. The last band is the tolerance, which the list leaves open.`)],
  };
}

const counts = ['no', 'One', 'Two', 'Three', 'Four', 'Five', 'Six'];

function bandWords(bands: readonly string[]): string {
  return `${counts[bands.length]} bands: ${bands.join(', ')}.`;
}

/** In ppm/K, as in `50 ppm/K`; null where none is told. */
function tempcoOf({ part, text }: Described): number | null {
  const words = [text, ...part.ratings.map((rating) => rating.text), ...Object.values(part.other)].join(', ');
  const found = /(?<![\d.,])(\d{1,3}) ?ppm\b/iu.exec(words) ?? /\bT[CK]R? ?±? ?(\d{1,3})\b/u.exec(words);
  return found === null ? null : Number(found[1]);
}

function chipResistor(part: Described, ohms: number, size: string | null): PartLook {
  const tooSmall: LookSign = usual('Too small to carry a print, so keep it in its labelled strip until it is used.');
  if (size !== null && ['01005', '0201', '0402'].includes(size)) return formed('chip', [tooSmall]);
  const tolerance = toleranceOf(part);
  const three = smdResistorCodeOf(ohms, 3);
  const four = smdResistorCodeOf(ohms, 4);
  const letter = eia96Of(ohms);
  const fine = size === '0603' ? [letter, four, three] : [four, letter, three];
  const codes = tolerance === null ? [three, four, letter] : tolerance <= 0.02 ? fine : [three, four];
  const known = [...new Set(codes.filter((code) => code !== null))];
  const [likeliest] = known;
  if (likeliest === undefined) return formed('chip', []);
  return formed('chip', [usual(`Often printed ${orList(known)}. Either way round is right.`)], likeliest);
}

function orList(codes: readonly string[]): string {
  return listed(codes).replace(/ and (?=\S+$)/u, ' or ');
}

function inOhms(ohms: number): string {
  return formatQuantity('resistance', ohms);
}

/** A resistor that one turns. */
export function lookOfPotentiometer(part: Described): PartLook {
  const ohms = measureOf(part, 'resistance');
  const code = ohms === null ? null : smdResistorCodeOf(ohms, 3);
  if (says(part, 'trimmer|trimpot|preset|trim')) {
    return formed('trimmer', code === null ? [] : [usual(`Often printed ${code}, for ${inOhms(ohms ?? 0)}.`)]);
  }
  const short = ohms === null ? null : inOhms(ohms).replace(/ ?Ω/u, '').replace(' ', '').toUpperCase();
  return formed('dial', short === null ? [] : [usual(`Often stamped ${short} with a letter for its curve.`)]);
}
