import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import { isRealPart } from './realParts.ts';

/** Rows that name parts which are fitted. */
export function fittedRows({ parts }: Build): readonly Part[] {
  return fittedAmong(parts);
}

const fittedAmong = rememberFor((parts: readonly Part[]) => parts.filter((part) => part.fitted && isRealPart(part)));

/** Everything that a row says of its part, prices and shops left out. */
export const rowWords = rememberFor((part: Part): string =>
  [
    part.description,
    part.value.is === 'unknown' ? '' : part.value.claims.map(({ value }) => value.text).join(' '),
    part.cells.value?.quote ?? '',
    part.cells.rating?.quote ?? '',
    part.package ?? '',
    part.mpn ?? '',
    part.note ?? '',
    part.substitution ?? '',
    ...Object.values(part.other),
  ]
    .filter((words) => words !== '')
    .join(' · '),
);

/** A row's name in a message: its references, else the beginning of its description. */
export function rowName(part: Part): string {
  const [first, second] = part.refs;
  if (first !== undefined) return second === undefined ? first : `${first}…`;
  const words = part.description.split(/[,;(]/u)[0]?.trim() ?? part.description;
  return `‘${words.length > 40 ? `${words.slice(0, 39)}…` : words}’`;
}

/** Whether a list is kept with enough care that what it leaves out is an omission: five rows, or references for most. */
export function isDetailedList(build: Build): boolean {
  const rows = fittedRows(build);
  return rows.length >= 5 || (rows.length >= 3 && rows.filter(({ refs }) => refs.length > 0).length * 2 > rows.length);
}

/** The places of rows, for a finding about all of them: the first five. */
export function firstRows(parts: readonly Part[]): Place[] {
  return parts.slice(0, 5).map(({ place }) => place);
}

/** A number that a maker gives to a type: letters and digits, such as `1N4148`, `BC547B` or `74HC595`. */
export function hasTypeNumber(text: string): boolean {
  return typeNumber.test(text.replace(notTypes, ' ').toUpperCase());
}

const notTypes =
  /\b(?:AWG|IP|PH|PZ|PG|UL|RoHS|ISO|DIN|EN|IEC|M|T|USB)[- ]?\d+(?:[.,]\d+)?\b|\b\d+(?:[.,]\d+)?\s?[a-zA-ZµμΩ]{1,4}\b|\b\d+[RKMkunpµμ]\d+\b/gu;
const typeNumber =
  /(?<![\p{L}\p{N}])(?:[A-Z]{1,6}-?\d{2,}[A-Z0-9-]*|\d{1,2}[A-Z]{1,4}\d{2,}[A-Z0-9]*|[A-Z]{2,6}\d[A-Z0-9-]+)(?![\p{L}\p{N}])/u;
