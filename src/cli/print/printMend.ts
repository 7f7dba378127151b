import type { Mendable } from '#app/mend.ts';
import { safe, wrapped } from './layout.ts';

/** The lines that an edit replaces, and those that take their place. */
export function printMend({ finding, edit, source }: Mendable, number: number): string {
  const lines = [`${number}. ${finding.check}: ${safe(edit.file)}`, wrapped(safe(finding.message), '   ')];
  for (const { before, after, line } of changedLines(source.text, edit.changes)) {
    lines.push(`   line ${line}`);
    lines.push(...before.map((text) => `   - ${safe(text)}`), ...after.map((text) => `   + ${safe(text)}`));
  }
  return `${lines.join('\n')}\n`;
}

interface ChangedLines {
  readonly line: number;
  readonly before: readonly string[];
  readonly after: readonly string[];
}

function changedLines(text: string, changes: Mendable['edit']['changes']): ChangedLines[] {
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
