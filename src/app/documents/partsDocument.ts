import { firstValue } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import type { PartsListing } from '../listParts.ts';
import { problemDocument } from './placeDocument.ts';

/** JSON output of `parts`. */
export function partsDocument({ lists, problems }: PartsListing): Record<string, unknown> {
  return {
    format: 1,
    columns: lists.flatMap(({ file, columns }) => columns.map(({ header, meaning }) => ({ file, header, meaning }))),
    parts: lists.flatMap(({ file, parts }) => parts.map((part) => partDocument(part, file))),
    problems: problems.map(problemDocument),
  };
}

function partDocument(part: Part, file: string): Record<string, unknown> {
  const amount = firstValue(part.amount);
  const value = firstValue(part.value);
  return {
    id: part.id,
    refs: part.refs,
    quantity: amount?.n ?? null,
    unit: amount?.unit ?? null,
    approximate: amount?.approximate ?? null,
    description: part.description,
    value: value === undefined ? null : { kind: value.kind, si: value.si, text: value.text },
    ratings: part.ratings.map(({ kind, si, text }) => ({ kind, si, text })),
    package: part.package,
    mpn: part.mpn,
    supplier: part.supplier,
    links: part.links,
    price: part.price,
    substitution: part.substitution,
    note: part.note,
    section: part.section,
    fitted: part.fitted,
    file,
    row: part.place.line,
    other: part.other,
  };
}
