/** Columns that text is set in: the terminal's, within what reads well. */
export function textWidth(): number {
  return Math.max(40, Math.min(process.stdout.columns ?? 88, 96));
}

/** Words set to a width, each line indented. A percent sign stays with its number. */
export function wrapped(text: string, indent: string, width = textWidth()): string {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(/\s+(?!%)/).filter((part) => part !== '')) {
    if (line.length > indent.length && line.length + word.length + 1 > width) {
      lines.push(line);
      line = indent;
    }
    line += line.length > indent.length ? ` ${word}` : word;
  }
  lines.push(line);
  return lines.join('\n');
}

/** Rows with columns of even width; the last column is left ragged. */
export function inColumns(rows: readonly (readonly string[])[], indent = '  '): string {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [at, cell] of row.slice(0, -1).entries()) widths[at] = Math.max(widths[at] ?? 0, [...cell].length);
  }
  return rows
    .map(
      (row) => indent + row.map((cell, at) => (at < row.length - 1 ? padded(cell, widths[at] ?? 0) : cell)).join('   '),
    )
    .map((line) => line.trimEnd())
    .join('\n');
}

/** '1 part', '2 parts'. */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** Text without control characters: file names and quotes may hold anything. */
export function safe(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]+/g, ' ');
}

/** The first line of a text, cut to a length. */
export function firstLine(text: string, length: number): string {
  const line = safe(text.trim().split(/\r\n|\r|\n/)[0] ?? '');
  return line.length > length ? `${line.slice(0, length - 1)}…` : line;
}

function padded(cell: string, width: number): string {
  return cell + ' '.repeat(Math.max(0, width - [...cell].length));
}
