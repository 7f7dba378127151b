import { type Claim, declared, type Known, unknown } from '#core/claim.ts';
import type { Ref } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import type { Quantity, QuantityKind } from '#core/quantity.ts';
import { refClass } from '#notation/refs.ts';
import { parseValueCell, sameQuantity } from '#notation/value.ts';

/** A cell that may state a value; `kind` is what its header says it measures. */
export interface ValueCellText {
  readonly text: string;
  readonly kind: QuantityKind | null;
  readonly place: TextPlace;
}

/** What the cells of a row say of a part's value, ratings and body. */
export interface PartValue {
  readonly value: Known<Quantity>;
  readonly ratings: readonly Quantity[];
  readonly package: string | null;
}

/**
 * The value of a part by its value cells; contradicted where two differ. Where there is no such cell, a resistor,
 * capacitor, inductor or crystal may have it in its description: then it is only read, not declared.
 */
export function readPartValue(
  cells: readonly ValueCellText[],
  ratingCells: readonly ValueCellText[],
  description: ValueCellText | null,
  refs: readonly Ref[],
): PartValue {
  const kind = kindOf(refs, description?.text ?? '');
  const read = cells.map((cell) => ({ cell, ...parseValueCell(cell.text, hint(cell.kind ?? kind)) }));
  const rated = ratingCells.map((cell) => ({ cell, ...parseValueCell(cell.text, hint(kind)) }));
  const all = claimsOf(read);
  // A second value of another kind is what the part stands: 0.1 µF, 50 V.
  const claims = all.filter(({ value }) => value.kind === all[0]?.value.kind);
  const ratings = [
    ...all.filter((claim) => !claims.includes(claim)).map(({ value }) => value),
    ...read.flatMap((each) => each.ratings),
  ];
  if (claims.length === 0 && kind !== null)
    claims.push(
      ...claimsOf(rated)
        .filter(({ value }) => value.kind === kind)
        .slice(0, 1),
    );
  ratings.push(
    ...(rated
      .flatMap((each) => [each.value, ...each.ratings])
      .filter((each) => each !== null && each !== claims[0]?.value) as Quantity[]),
  );
  const described =
    claims.length > 0 || kind === null || description === null ? null : parseValueCell(description.text, hint(kind));
  if (described?.value?.kind === kind && described?.value && description !== null) {
    claims.push({ value: described.value, basis: 'read', places: [description.place], confidence: 0.8 });
    ratings.push(...described.ratings);
  }
  const bodies = [...read, ...rated, ...(described === null ? [] : [described])];
  return {
    value: known(claims, cells),
    ratings,
    package: bodies.find((each) => each.package !== null)?.package ?? null,
  };
}

function claimsOf(read: readonly { cell: ValueCellText; value: Quantity | null }[]): Claim<Quantity>[] {
  return read.flatMap(({ cell, value }) => (value === null ? [] : [declared(value, cell.place)]));
}

function known(claims: readonly Claim<Quantity>[], cells: readonly ValueCellText[]): Known<Quantity> {
  const [first, ...more] = claims;
  if (first === undefined) {
    const [cell] = cells;
    return unknown(cell === undefined ? 'a value' : `a value that can be measured; '${cell.text}' is a name`);
  }
  const agree = more.every(({ value }) => sameQuantity(value, first.value));
  return { is: agree ? 'confirmed' : 'contradicted', claims: [first, ...more] };
}

function hint(kind: QuantityKind | null): { kind?: QuantityKind } {
  return kind === null ? {} : { kind };
}

/** What the value of a part of this kind measures; null for parts that are named rather than measured. */
function kindOf(refs: readonly Ref[], description: string): QuantityKind | null {
  const [ref] = refs;
  switch (ref === undefined ? null : refClass(ref)) {
    case 'resistor':
      return 'resistance';
    case 'capacitor':
      return 'capacitance';
    case 'inductor':
      return 'inductance';
    case 'crystal':
      return 'frequency';
    case null:
      return ref === undefined ? kindByWords(description) : null;
    default:
      return null;
  }
}

function kindByWords(description: string): QuantityKind | null {
  const [word] = /\b(?:resistor|potentiometer|capacitor|inductor|choke|crystal)s?\b/i.exec(description) ?? [];
  switch (word?.toLowerCase().replace(/s$/, '')) {
    case 'resistor':
    case 'potentiometer':
      return 'resistance';
    case 'capacitor':
      return 'capacitance';
    case 'inductor':
    case 'choke':
      return 'inductance';
    case 'crystal':
      return 'frequency';
    default:
      return null;
  }
}
