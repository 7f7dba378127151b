import type { Spot } from './mutant.ts';
import { linesIn, type Project } from './project.ts';

/** A cell with where it stands in its line. */
export interface Cell {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

export interface Row extends Spot {
  readonly words: string;
  readonly cells: readonly Cell[];
}

export interface Table {
  readonly header: readonly string[];
  readonly rows: readonly Row[];
}

/** The table of a file whose header holds all the given words; of Markdown, the one under that header. */
export function tableOf(project: Project, file: string, ...heads: readonly string[]): Table | null {
  const lines = linesIn(project, file);
  const isMarkdown = file.endsWith('.md');
  const cellsAt = (index: number) => (isMarkdown ? markdownCells : separatedCells)(lines[index] ?? '', file);
  const at = lines.findIndex((_, index) => {
    const names = cellsAt(index).map(({ text }) => text.toLowerCase());
    return heads.every((head) => names.includes(head));
  });
  if (at < 0) return null;
  const rows: Row[] = [];
  for (let index = at + (isMarkdown ? 2 : 1); index < lines.length && lines[index] !== ''; index++) {
    rows.push({ file, line: index + 1, words: lines[index] ?? '', cells: cellsAt(index) });
  }
  return { header: cellsAt(at).map(({ text }) => text.toLowerCase()), rows };
}

/** The cell of a row under one of several names of a column; null where it is empty or missing. */
export function cellOf(table: Table, row: Row, ...names: readonly string[]): Cell | null {
  const index = table.header.findIndex((head) => names.includes(head));
  const cell = row.cells[index];
  return cell === undefined || cell.text === '' ? null : cell;
}

/** The row's line with other words in one cell. */
export function withCell(row: Row, cell: Cell, text: string): string {
  return row.words.slice(0, cell.start) + text + row.words.slice(cell.end);
}

function markdownCells(line: string): Cell[] {
  if (!line.startsWith('|')) return [];
  return [...line.matchAll(/\|\s*([^|]*?)\s*(?=\|)/g)].map((match) => {
    const start = match.index + match[0].indexOf(match[1] ?? '', 1);
    return { text: match[1] ?? '', start, end: start + (match[1] ?? '').length };
  });
}

function separatedCells(line: string, file: string): Cell[] {
  const separator = file.endsWith('.tsv') ? '\t' : line.includes(';') ? ';' : ',';
  const cells: Cell[] = [];
  let at = 0;
  while (at <= line.length) {
    const isQuoted = line[at] === '"';
    const close = isQuoted ? line.indexOf('"', at + 1) : at;
    const found = line.indexOf(separator, Math.max(close, at));
    const end = found < 0 ? line.length : found;
    const [from, to] = isQuoted ? [at + 1, close] : [at, end];
    cells.push({ text: line.slice(from, to).trim(), start: from, end: to });
    at = end + 1;
  }
  return cells;
}
