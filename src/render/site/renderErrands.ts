import { isWebAddress } from '#guide/links.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { formatMoney } from './formatAmount.ts';
import type { Errand, Shopping, ToBuy } from './reader/shopping.ts';
import { amountWords, costWords, packWords, sumWords } from './reader/shoppingWords.ts';

/** What to buy, shop by shop, and what it comes to. The script of the page writes other numbers into the same places. */
export function renderErrands({ errands, sums }: Shopping): Html[] {
  const whole = sumWords(sums);
  return [
    ...errands.map(renderErrand),
    ...(whole === '' || errands.length < 2
      ? []
      : [
          element(
            'p',
            { class: 'sum whole' },
            'All together ',
            element('span', { class: 'figure', id: 'whole-sum' }, whole),
          ),
        ]),
  ];
}

function renderErrand(errand: Errand, index: number): Html {
  const sum = sumWords(errand.sums);
  const priced = sum !== '';
  return element(
    'div',
    { class: 'errand' },
    element('h3', {}, errand.supplier ?? 'No supplier told'),
    element(
      'table',
      {},
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          element('th', { scope: 'col' }, 'Amount'),
          element('th', { scope: 'col' }, 'Part'),
          priced && element('th', { scope: 'col', class: 'align-right' }, 'Cost'),
        ),
      ),
      element('tbody', {}, ...errand.rows.map((row) => renderRow(row, priced))),
    ),
    priced &&
      element('p', { class: 'sum' }, 'Together ', element('span', { class: 'figure', id: `sum-${index}` }, sum)),
  );
}

function renderRow(row: ToBuy, priced: boolean): Html {
  const { wanted } = row;
  const facts = [wanted.refs, wanted.value, wanted.ratings, wanted.body, wanted.mpn, priceOf(row)];
  return element(
    'tr',
    { 'data-row': wanted.id },
    element('td', { class: 'number amount' }, amountWords(row)),
    element(
      'th',
      { scope: 'row' },
      element('span', { class: 'name' }, named(row)),
      element('span', { class: 'detail' }, facts.filter((fact) => fact !== '').join(', ')),
      wanted.price?.packed === true && element('span', { class: 'detail packs' }, packWords(row)),
    ),
    priced && element('td', { class: 'number cost' }, costWords(row)),
  );
}

function named({ wanted }: ToBuy): Child {
  return isWebAddress(wanted.link) ? element('a', { href: wanted.link }, wanted.name) : wanted.name;
}

function priceOf({ wanted: { price, amount } }: ToBuy): string {
  if (price === null) return '';
  const unit = amount === null || amount.unit === 'pcs' || amount.unit === '' ? null : amount.unit;
  const each = unit === null ? ' each' : ` for 1 ${unit}`;
  return `${formatMoney(price)}${price.per === 1 ? each : ` for ${price.per}`}`;
}
