import { reasonInWords } from '#checks/acceptance.ts';
import type { FindingGroup } from '#checks/groupFindings.ts';
import type { Build } from '#core/build.ts';
import type { Finding, Weight } from '#core/finding.ts';
import { lineAt } from '#core/lineAt.ts';
import type { Place } from '#core/place.ts';
import { count, firstLine, safe, textWidth, wrapped } from './layout.ts';

const weightWords: Record<Weight, string> = {
  halts: 'halts a builder',
  slows: 'slows a builder',
  tidy: 'tidy up',
};

/** A finding; of many alike the first in full, and where the others are (`most` of them). */
export function printGroup({ findings }: FindingGroup, number: number, build: Build, most: number): string {
  const [first, ...others] = findings;
  if (others.length === 0) return printFinding(first, number, build);
  const places = others
    .slice(0, most)
    .map(({ sides, message }) => wrapped(`${placeInShort(sides[0]?.place)}: ${safe(message)}`, '   '));
  return `${printFinding(first, number, build)}   And ${count(others.length, 'more', 'more')} of the kind:\n${places.join('\n')}\n${others.length > most ? `   and ${count(others.length - most, 'more', 'more')}\n` : ''}`;
}

function placeInShort(place: Place | undefined): string {
  if (place === undefined) return '';
  return place.kind === 'text' ? `${safe(place.file)}, line ${place.line}` : safe(place.file);
}

/** A finding: what the witnesses say, one above the other, what follows from it, and what to do. */
export function printFinding(finding: Finding, number: number, build: Build): string {
  const who =
    finding.audience === 'publisher' && finding.weight === 'halts' ? 'halts publishing' : weightWords[finding.weight];
  const lines = [`${number}. ${who} (${finding.check})`];
  if (finding.lapsed !== null) {
    lines.push(
      wrapped(`You accepted this (${safe(reasonInWords(finding.lapsed))}), but something has changed since.`, '   '),
    );
  }
  // Two sides may be two sentences of one line, which reads twice the same.
  const places = new Set(finding.sides.map(({ place }) => printPlace(place, build)));
  lines.push(...places);
  lines.push(wrapped(safe(finding.message), '   '));
  lines.push(wrapped(safe(finding.consequence), '   '));
  lines.push(wrapped(`To do: ${safe(finding.remedy)}`, '   '));
  return `${lines.filter((line) => line.trim() !== '').join('\n')}\n`;
}

function printPlace(place: Place, build: Build): string {
  const file = safe(place.file);
  switch (place.kind) {
    case 'text':
      return `   ${file}, line ${place.line}\n      “${firstLine(lineAt(build, place).trim(), textWidth() - 10)}”`;
    case 'picture':
    case 'file':
      return `   ${file}`;
  }
}
