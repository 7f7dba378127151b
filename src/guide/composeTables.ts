import type { Build } from '#core/build.ts';
import { firstValue, type Known } from '#core/claim.ts';
import type { Facts } from '#core/facts.ts';
import type { Part } from '#core/part.ts';
import type { Amount, Quantity } from '#core/quantity.ts';
import type { BlockNames } from './blockNames.ts';
import type { PartRow, ToolRow, WiringRow } from './guide.ts';
import { composeLook } from './look/composeLook.ts';
import { sparesOf } from './sparesOf.ts';
import { type StepMarks, stated, stepsThat } from './stepMarks.ts';
import { writtenCell } from './writtenCell.ts';

/** What the rows of all tables are composed from. */
export interface TableSources {
  readonly build: Build;
  readonly facts: Facts;
  readonly marks: StepMarks;
  readonly names: BlockNames;
}

/** The bill of materials, row by row as the maker listed it. */
export function composePartRows({ build, facts, marks, names }: TableSources): PartRow[] {
  return build.parts.map((part) => {
    const look = composeLook(part, toldBands(part, facts));
    const spares = sparesOf(part, build.texts);
    const written = part.value.is === 'unknown' ? writtenCell(part, 'value', build.texts) : '';
    return {
      id: names.of('part', part.id),
      places: [part.place],
      part: part.id,
      refs: part.refs,
      amounts: amountsOf(part.amount),
      description: part.description,
      value: valueBesides(part),
      ratings: part.ratings.filter((rating) => !says(part.description, rating)),
      package: part.package,
      mpn: part.mpn,
      supplier: part.supplier,
      links: part.links,
      price: part.price,
      substitution: part.substitution,
      note: part.note,
      fitted: part.fitted,
      group: part.section,
      usedIn: stepsThat(marks, facts, (step) => stated(step.uses).some((use) => use.value.part === part.id)),
      ...(written === '' || squeezed(part.description).includes(squeezed(written)) ? {} : { stated: written }),
      ...(spares === null ? {} : { spares }),
      ...(isPacked(part) ? { packed: true } : {}),
      ...(look === null ? {} : { look }),
    };
  });
}

/** The colours of a resistor's bands as the guide's own text tells them; null where it tells none. */
function toldBands(part: Part, facts: Facts): string[] | null {
  const told = facts.values.find(({ value }) => value.part === part.id && value.marked === 'bands');
  return (
    told?.value.value.text
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .filter((word) => word !== 'and' && word !== '') ?? null
  );
}

/** A price for several pieces that was listed as such; a sum for all pieces of the row is no price of a pack. */
function isPacked(part: Part): boolean {
  return part.price !== null && part.price.per > 1 && part.cells.price !== undefined;
}

/** The tools, the needed ones first. */
export function composeToolRows({ build, names }: TableSources): ToolRow[] {
  return [...build.tools]
    .sort((a, b) => Number(b.needed) - Number(a.needed))
    .map((tool) => ({
      id: names.of('tool', tool.name),
      places: [tool.place],
      name: tool.name,
      needed: tool.needed,
      link: tool.link,
      note: tool.note,
    }));
}

/** The wiring table as the maker wrote it, each row with the steps that make it. */
export function composeWiringRows({ build, facts, marks, names }: TableSources): WiringRow[] {
  return build.connections.map((row) => ({
    id: names.of('wire', row.id),
    places: [row.place],
    from: row.from,
    to: row.to,
    net: row.net,
    colour: row.colour,
    gauge: row.gauge,
    length: row.length,
    note: row.note,
    madeIn: stepsThat(marks, facts, (step) => stated(step.connects).some((join) => join.value.connection === row.id)),
  }));
}

function amountsOf(known: Known<Amount>): Amount[] {
  if (known.is === 'unknown') return [];
  const amounts = new Map(known.claims.map((claim) => [`${claim.value.n} ${claim.value.unit}`, claim.value]));
  return [...amounts.values()];
}

function valueBesides(part: Part): Quantity | null {
  const value = firstValue(part.value);
  return value && !says(part.description, value) ? value : null;
}

function says(description: string, quantity: Quantity): boolean {
  return squeezed(description).includes(squeezed(quantity.text));
}

function squeezed(text: string): string {
  return text.replace(/\s+/g, '').toLowerCase();
}
