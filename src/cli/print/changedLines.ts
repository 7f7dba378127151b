import type { Edit } from '#core/edit.ts';

/** `line` counts from 1 in the text as it was. */
export interface ChangedLines {
  readonly line: number;
  readonly before: readonly string[];
  readonly after: readonly string[];
}

/** The lines of a text that changes replace, and those that take their place. */
export function changedLines(text: string, changes: Edit['changes']): ChangedLines[] {
  return changes.map(({ span: [start, end], text: words }) => {
    const from = Math.max(text.lastIndexOf('\n', start - 1), text.lastIndexOf('\r', start - 1)) + 1;
    const rest = text.slice(end).search(/[\r\n]/);
    const to = rest < 0 ? text.length : end + rest;
    const before = linesOf(text.slice(from, to));
    const after = linesOf(text.slice(from, start) + words + text.slice(end, to));
    while (before.length > 0 && after.length > 0 && before.at(-1) === after.at(-1)) {
      before.pop();
      after.pop();
    }
    let same = 0;
    while (before.length > same && after.length > same && before[same] === after[same]) same++;
    const line = linesOf(text.slice(0, from)).length + same;
    return { line, before: before.slice(same), after: after.slice(same) };
  });
}

function linesOf(text: string): string[] {
  return text.split(/\r\n|\r|\n/);
}
