import { type Known, unknown } from '#core/claim.ts';
import type { Part, PartLink, PartsList } from '#core/part.ts';
import type { Span, TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { Amount } from '#core/quantity.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import { PartIds } from './partIds.ts';
import { linksIn } from './partLinks.ts';
import { type Bullet, readBullets } from './readBullet.ts';
import { readPartAmount } from './readPartAmount.ts';
import { readPartValue } from './readPartValue.ts';

export { readPartsTable } from './readPartsTable.ts';

/**
 * Reads the items of a section that lists parts: '**58 diodes 1N4148W**. They are …', '10 (+4) M2 spacers', 'R1: 330 Ω'.
 * The bold words, else the first clause, name the part; the rest is its note.
 */
export function readPartsBullets(
  source: SourceText,
  items: readonly { readonly span: Span }[],
  takenIds?: ReadonlySet<string>,
): { list: PartsList; problems: Problem[] } {
  const ids = new PartIds(takenIds);
  const parts: Part[] = [];
  const problems: Problem[] = [];
  let section: string | null = null;
  for (const { span } of items) {
    const written = source.text.slice(span[0], span[1]);
    if (/:\s*$/.test(written)) {
      // A word with a colon opens a group of items below it.
      section = readBullets(written)[0]?.name ?? section;
      continue;
    }
    const bullets = readBullets(written);
    parts.push(...bullets.map((bullet) => partOf(source, span, bullet, section, ids)));
    if (bullets.length === 0) problems.push(namesNothing(placeOf(source, span)));
  }
  return { list: { columns: [], parts }, problems };
}

function partOf(source: SourceText, span: Span, bullet: Bullet, section: string | null, ids: PartIds): Part {
  const place = placeOf(source, span);
  const named = placeOfWords(source, span, bullet.name) ?? place;
  const value = readPartValue([], [], { text: bullet.name, kind: null, place: named }, bullet.refs);
  const stated = placeOfWords(source, span, bullet.amountText);
  return {
    id: ids.next(bullet.refs, bullet.name, section),
    refs: bullet.refs,
    amount: amountOf(bullet, place, stated),
    description: bullet.name,
    value: value.value,
    ratings: value.ratings,
    package: value.package,
    mpn: null,
    supplier: null,
    links: linksOf(source.text.slice(span[0], span[1]), bullet),
    price: null,
    substitution: null,
    note:
      bullet.optional && !/\boptional/i.test(bullet.note ?? '')
        ? ['optional', bullet.note].filter(Boolean).join('; ')
        : bullet.note,
    fitted: true,
    section,
    other: {},
    place,
    cells: { description: named, ...(stated === null ? {} : { quantity: stated }) },
  };
}

function amountOf(bullet: Bullet, place: TextPlace, stated: TextPlace | null): Known<Amount> {
  if (bullet.amount === null) return bullet.refs.length > 0 ? counted(bullet, place) : unknown(bullet.lacking);
  const { amount } = readPartAmount({
    refs: bullet.refs,
    refsPlace: place,
    quantity: [],
    unit: null,
    isOrdered: false,
  });
  const claim = { value: bullet.amount, basis: 'declared', places: [stated ?? place], confidence: 1 } as const;
  if (amount.is === 'unknown' || bullet.amount.unit !== 'pcs' || bullet.amount.approximate)
    return { is: 'confirmed', claims: [claim] };
  const [refs] = amount.claims;
  return { is: refs.value.n === bullet.amount.n ? 'confirmed' : 'contradicted', claims: [claim, refs] };
}

function counted(bullet: Bullet, place: TextPlace): Known<Amount> {
  return readPartAmount({ refs: bullet.refs, refsPlace: place, quantity: [], unit: null, isOrdered: false }).amount;
}

function linksOf(written: string, { link }: Bullet): PartLink[] {
  const links = linksIn(written.replace(/\]\(/g, '] ('), 'text');
  return link === null || links.some(({ url }) => url === link) ? links : [...links, ...linksIn(link, 'link')];
}

/** Where words of an item stand; null where markup runs through them. */
function placeOfWords(source: SourceText, span: Span, words: string): TextPlace | null {
  const at = words === '' ? -1 : source.text.slice(span[0], span[1]).indexOf(words);
  return at < 0 ? null : placeOf(source, [span[0] + at, span[0] + at + words.length]);
}

function namesNothing(place: TextPlace): Problem {
  return {
    place,
    message: 'This item was expected to name a part, and names nothing.',
    remedy: 'Write how many and what, such as: 4 spacers M2.5 × 10.',
  };
}
