import { headerWords } from '../csv/headerWords.ts';
import type { TableCell, TextTable } from '../csv/textTable.ts';
import table from './toolHeaders.json';

export type ToolMeaning = 'tool' | 'needed' | 'optional' | 'link' | 'note';

/** The columns of each meaning that a table has. A plain 'name' names a tool where nothing else does. */
export type ToolColumns = ReadonlyMap<ToolMeaning, number>;

/** Finds the columns of a list of tools by their headers. */
export function toolColumnsOf(header: readonly TableCell[]): ToolColumns {
  const columns = new Map<ToolMeaning, number>();
  let name: number | null = null;
  for (const [column, { text }] of header.entries()) {
    const meaning = meanings.get(headerWords(text).words);
    if (meaning === 'name') name ??= column;
    else if (meaning !== undefined && !columns.has(meaning)) columns.set(meaning, column);
  }
  if (!columns.has('tool') && name !== null) columns.set('tool', name);
  return columns;
}

/** How well a table's columns make a list of tools, from 0 to 1: named as tools, or as things needed or not. */
export function scoreTools({ header }: TextTable): number {
  const columns = toolColumnsOf(header);
  if (!columns.has('tool')) return 0;
  const isNamed = header.some(({ text }) => table.tool.includes(headerWords(text).words));
  const saysNeed = columns.has('needed') || columns.has('optional');
  return Math.min(1, (isNamed ? 0.7 : 0.1) + (saysNeed ? 0.5 : 0));
}

/** From here on a table is a list of tools. */
export const toolsThreshold = 0.6;

const { source: _, ...phrases } = table;
const meanings: ReadonlyMap<string, ToolMeaning | 'name'> = new Map(
  Object.entries(phrases).flatMap(([meaning, all]) =>
    all.map((phrase): [string, ToolMeaning | 'name'] => [phrase, meaning as ToolMeaning]),
  ),
);
