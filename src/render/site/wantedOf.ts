import type { PartLink } from '#core/part.ts';
import type { PartRow } from '#guide/guide.ts';
import { isWebAddress } from '#guide/links.ts';
import { formatQuantity } from '#notation/value.ts';
import { formatAmount, formatRefs } from './formatAmount.ts';
import type { Wanted } from './reader/shopping.ts';

/** The fitted rows of a parts list as a list for shopping needs them. */
export function wantedOf(rows: readonly PartRow[]): Wanted[] {
  return rows.filter(({ fitted }) => fitted).map(wanted);
}

function wanted(row: PartRow): Wanted {
  const [amount] = row.amounts;
  const { price } = row;
  return {
    id: row.id,
    refs: formatRefs(row.refs),
    name: row.description,
    value: row.value === null ? (row.stated ?? '') : formatQuantity(row.value.kind, row.value.si),
    ratings: row.ratings.map(({ kind, si }) => formatQuantity(kind, si)).join(', '),
    body: row.package ?? '',
    mpn: row.mpn ?? '',
    supplier: row.supplier,
    link: shopOf(row.links)?.url ?? '',
    note: row.note ?? '',
    amount: amount === undefined || row.amounts.length > 1 ? null : amount,
    open: row.amounts.length === 0 ? 'not said' : row.amounts.map(formatAmount).join(' or '),
    spares: row.spares ?? 0,
    price: price === null ? null : { ...price, packed: row.packed ?? false },
  };
}

/** The address of a shop, else any other that is told. */
function shopOf(links: readonly PartLink[]): PartLink | undefined {
  const web = links.filter(({ url }) => isWebAddress(url));
  return web.find(({ kind }) => kind === 'shop') ?? web.find(({ kind }) => kind === 'other');
}
