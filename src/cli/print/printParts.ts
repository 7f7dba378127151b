import type { PartsListing } from '#app/listParts.ts';
import { firstValue } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import { count, firstLine, inColumns, safe, wrapped } from './layout.ts';

/** Parts as they were understood, list by list. */
export function printParts({ lists, problems }: PartsListing): string {
  if (lists.length === 0)
    return 'No parts list was found. A CSV file with columns such as reference, quantity and value is one.\n';
  const parts = lists.map(({ file, columns, parts: rows }) => {
    const taken = columns
      .map(({ header, meaning }) => `${safe(header)} as ${meaning ?? 'a column of your own'}`)
      .join(', ');
    const heading = columns.length === 0 ? '' : `${wrapped(`Columns: ${taken}.`, '')}\n`;
    return `${safe(file)}: ${count(rows.length, 'row')}\n${heading}\n${inColumns(rows.map(rowOf))}\n`;
  });
  const trouble = problems.map(({ place, message, remedy }) =>
    wrapped(
      `${safe(place.file)}${place.kind === 'text' ? `, line ${place.line}` : ''}: ${safe(message)} ${safe(remedy)}`,
      '',
    ),
  );
  return [...parts, ...trouble.map((line) => `${line}\n`)].join('\n');
}

function rowOf(part: Part): string[] {
  const amount = firstValue(part.amount);
  const quantity =
    amount === undefined
      ? '?'
      : `${amount.approximate ? '~' : ''}${amount.n}${amount.unit === 'pcs' ? '' : ` ${amount.unit}`}`;
  return [
    part.refs.length === 0 ? part.id : part.refs.join(' '),
    quantity,
    firstValue(part.value)?.text ?? '',
    part.ratings.map(({ text }) => text).join(' '),
    `${firstLine(part.description, 60)}${part.fitted ? '' : ' (not fitted)'}`,
  ];
}
