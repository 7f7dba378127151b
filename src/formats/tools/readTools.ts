import type { Tool } from '#core/part.ts';
import type { Span } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import { findHeader } from '../csv/findHeader.ts';
import { lexCsv } from '../csv/lexCsv.ts';
import { tablesBeside } from '../csv/tablesBeside.ts';
import { placeOfRow, type TableCell, type TextTable } from '../csv/textTable.ts';
import { type Bullet, readBullet } from '../parts/readBullet.ts';
import { scoreTools, type ToolColumns, type ToolMeaning, toolColumnsOf } from './toolColumns.ts';
import { answersNeeded, answersOptional, saysNeeded } from './toolNeed.ts';

export interface ReadTools {
  readonly tools: Tool[];
  readonly problems: Problem[];
}

/**
 * Reads a list of tools from a table of any delimiter. The file is known to play this role, so that a plain 'name' is
 * enough of a header, and a list of one column needs none. Null where the text holds no rows.
 */
export function readTools(source: SourceText): ReadTools | null {
  const { rows } = lexCsv(source);
  const filled = rows.filter(({ cells }) => cells.some(({ text }) => text.trim() !== ''));
  if (filled.length === 0) return null;
  const header = findHeader(rows, (table) => scoreTools(table) || (toolColumnsOf(table.header).has('tool') ? 0.1 : 0));
  if (header !== null)
    return joined(tablesBeside(rows, header.index).flatMap((table) => readToolsTable(source, table) ?? []));
  const isList = filled.every(({ cells }) => cells.slice(1).every(({ text }) => text.trim() === ''));
  return isList
    ? joined(filled.map(({ cells }) => ({ tools: toolOf(source, cells, new Map([['tool', 0]])), problems: [] })))
    : null;
}

/** Reads a table of any file as a list of tools; null where no column names them. */
export function readToolsTable(source: SourceText, table: TextTable): ReadTools | null {
  const columns = toolColumnsOf(table.header);
  if (!columns.has('tool')) return null;
  const tools: Tool[] = [];
  const problems: Problem[] = [];
  for (const row of table.rows) {
    const found = toolOf(source, row, columns);
    tools.push(...found);
    if (found.length === 0 && row.some(({ text }) => text.trim() !== '')) problems.push(unnamed(source, row));
  }
  return { tools, problems };
}

/** Reads the items of a section that lists tools, one tool each. */
export function readToolBullets(source: SourceText, items: readonly { readonly span: Span }[]): ReadTools {
  const tools: Tool[] = [];
  const problems: Problem[] = [];
  for (const { span } of items) {
    const bullet = readBullet(source.text.slice(span[0], span[1]));
    if (bullet === null)
      problems.push({
        place: placeOf(source, span),
        message: 'This item was expected to name a tool, and names nothing.',
        remedy: 'Name the tool, or take the item out.',
      });
    else tools.push(toolOfBullet(source, span, bullet));
  }
  return { tools, problems };
}

function joined(read: readonly ReadTools[]): ReadTools {
  return { tools: read.flatMap(({ tools }) => tools), problems: read.flatMap(({ problems }) => problems) };
}

function toolOf(source: SourceText, row: readonly TableCell[], columns: ToolColumns): Tool[] {
  const textOf = (meaning: ToolMeaning) => row[columns.get(meaning) ?? -1]?.text.trim() ?? '';
  const bullet = readBullet(textOf('tool'));
  if (bullet === null) return [];
  const answers = [
    ...(columns.has('needed') && textOf('needed') !== '' ? [answersNeeded(textOf('needed'))] : []),
    ...(columns.has('optional') && textOf('optional') !== '' ? [!answersOptional(textOf('optional'))] : []),
    ...(bullet.optional ? [false] : []),
  ];
  const note = textOf('note') || bullet.note;
  return [
    {
      name: bullet.name,
      needed: answers.every((answer) => answer),
      link: textOf('link') || bullet.link,
      note: note === '' ? null : note,
      place: placeOfRow(source, row),
    },
  ];
}

function toolOfBullet(source: SourceText, span: Span, bullet: Bullet): Tool {
  // 'Alcohol for cleaning': the tool, and what for.
  const [, name = bullet.name, purpose = ''] = /^(.+?) (for .+)$/i.exec(bullet.name) ?? [];
  const note = [purpose, bullet.note ?? ''].filter((words) => words !== '').join('; ');
  return {
    name,
    needed: !bullet.optional && saysNeeded(bullet.note ?? '') !== false,
    link: bullet.link,
    note: note === '' ? null : note,
    place: placeOf(source, span),
  };
}

function unnamed(source: SourceText, row: readonly TableCell[]): Problem {
  return {
    place: placeOfRow(source, row),
    message: 'This row was expected to name a tool in its first column, and leaves it empty.',
    remedy: 'Name the tool, or take the row out.',
  };
}
