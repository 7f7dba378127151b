import { firstValue } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import type { Quantity, QuantityKind } from '#core/quantity.ts';
import { isPackage } from '#notation/codes.ts';

/** What is known of a part, made ready for questions about its looks. */
export interface Described {
  readonly part: Part;
  /** Description and body in one line. */
  readonly text: string;
  /** Null where it is not known, or where the maker's files dispute it. */
  readonly value: Quantity | null;
  /** Number under which the part is made, such as `BC547B`; null where none is told. */
  readonly type: string | null;
  /** Colour bands that the guide's own text tells of this part; null where it tells none. */
  readonly bands: readonly string[] | null;
}

export function describe(part: Part, bands: readonly string[] | null): Described {
  return {
    part,
    text: [part.description, part.package].filter((words) => words !== null).join(', '),
    value: part.value.is === 'confirmed' ? (firstValue(part.value) ?? null) : null,
    type: part.mpn ?? typeIn(part.description),
    bands,
  };
}

/** Whether one of the words stands in a part's description or body, alone or at the end of a compound. */
export function says({ text }: Described, words: string): boolean {
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${words})s?(?![\\p{L}])`, 'iu').test(text);
}

/** The part's value where it is of that kind. */
export function measureOf({ value }: Described, kind: QuantityKind): number | null {
  return value?.kind === kind ? value.si : null;
}

export function ratingOf({ part }: Described, kind: QuantityKind): Quantity | null {
  return part.ratings.find((rating) => rating.kind === kind) ?? null;
}

/** The tolerance as a fraction; null where none is told. Parts per million are mostly those per kelvin. */
export function toleranceOf(described: Described): number | null {
  const told = described.part.ratings.find(({ kind, text }) => kind === 'tolerance' && !/ppm/iu.test(text));
  return told?.si ?? null;
}

/** How many pins the body's name or the description tells: `DIP-14`, `8-SOIC`, '14 pins'. */
export function pinsOf({ text }: Described): number | null {
  const found =
    /\b(?:[CP]?DIP|S[OD]I[CL]|[MTQSV]{0,3}S?OP|[A-Z]{0,3}QF[NP]|DFN|SO)-?(\d{1,3})\b/iu.exec(text) ??
    /\b(\d{1,3})-?(?:[CP]?DIP|SOIC|[MTQS]{0,3}S?OP|[A-Z]{0,2}QF[NP])\b/iu.exec(text) ??
    /\b(\d{1,3})[- ](?:pins?|ways?|poles?|contacts?|positions?)\b/iu.exec(text);
  const pins = Number(found?.[1] ?? 0);
  return pins > 0 ? pins : null;
}

/** Sides in millimetres as in `70 × 50 mm`; null where no two are told. */
export function sizeOf({ text }: Described): [number, number] | null {
  const number = '(\\d{1,4}(?:[.,]\\d+)?)';
  const found = new RegExp(`(?<![\\d.,])${number} ?(?:mm)? ?[x×*] ?${number}(?: ?[x×*] ?[\\d.,]+)? ?mm\\b`, 'iu').exec(
    text,
  );
  const sides = found?.slice(1, 3).map((side) => Number(side.replace(',', '.')));
  const [one, other] = sides ?? [];
  return one && other ? [one, other] : null;
}

/** A chip size in hundredths of an inch, such as `0805`; null for every other body. */
export function chipSizeOf({ part, text }: Described): string | null {
  const found = /(?<![\d.])(01005|0201|0402|0603|0805|1206|1210|1812|2010|2512)(?![\d.])/u.exec(part.package ?? text);
  return found?.[1] ?? null;
}

/** A word of letters and at least two digits that names no body and no quantity, such as `NE555` or `74HC595`. */
function typeIn(description: string): string | null {
  const words = description.match(
    /(?<![\p{L}\p{N}.-])(?=[A-Z0-9]*[A-Z])(?=(?:[A-Z-]*\d){2})[A-Z0-9]{4,}(?:-[A-Z0-9]+)*/gu,
  );
  const named = words?.filter((word) => !isPackage(word) && !/^\d+(?:[munpkKMG]?[VAWFHRΩ]|AWG|MM)$/u.test(word));
  return named?.[0] ?? null;
}
