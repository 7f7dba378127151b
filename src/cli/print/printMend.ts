import type { Mendable } from '#app/mend.ts';
import { changedLines } from './changedLines.ts';
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
