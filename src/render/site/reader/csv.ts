/** What spreadsheets take for the beginning of a formula, wide forms of Chinese and Japanese keyboards included. */
const formula = /^[\s\p{Cc}]*[=+\-@＝＋－＠]|^[\t\r\n]/u;

/**
 * Rows as a file of comma-separated values (RFC 4180): lines end in CR LF, cells that need it stand in double quotes. A
 * cell that a spreadsheet would take for a formula gets an apostrophe before it, which spreadsheets know as the sign of
 * plain text. The byte order mark tells them that the text is UTF-8.
 */
export function formatCsv(rows: readonly (readonly string[])[]): string {
  return `\ufeff${rows.map((row) => `${row.map(formatCell).join(',')}\r\n`).join('')}`;
}

function formatCell(cell: string): string {
  const plain = formula.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]|^\s|\s$/u.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
