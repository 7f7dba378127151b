import type { Build } from '#core/build.ts';
import type { Finding, Weight } from '#core/finding.ts';
import type { Place } from '#core/place.ts';
import { firstLine, safe, textWidth, wrapped } from './layout.ts';
import { lineAt } from './lineAt.ts';

const weightWords: Record<Weight, string> = {
  halts: 'halts a builder',
  slows: 'slows a builder',
  tidy: 'tidy up',
};

/** A finding: what the witnesses say, one above the other, what follows from it, and what to do. */
export function printFinding(finding: Finding, number: number, build: Build): string {
  const who =
    finding.audience === 'publisher' && finding.weight === 'halts' ? 'halts publishing' : weightWords[finding.weight];
  const lines = [`${number}. ${who} (${finding.check})`];
  for (const { place } of finding.sides) lines.push(...printPlace(place, build));
  lines.push(wrapped(safe(finding.message), '   '));
  lines.push(wrapped(safe(finding.consequence), '   '));
  lines.push(wrapped(`To do: ${safe(finding.remedy)}`, '   '));
  return `${lines.filter((line) => line.trim() !== '').join('\n')}\n`;
}

function printPlace(place: Place, build: Build): string[] {
  const file = safe(place.file);
  switch (place.kind) {
    case 'text':
      return [`   ${file}, line ${place.line}`, `      “${firstLine(lineAt(build, place).trim(), textWidth() - 10)}”`];
    case 'picture':
    case 'file':
      return [`   ${file}`];
  }
}
