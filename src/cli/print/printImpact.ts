import type { ImpactReport } from '#app/impact.ts';
import type { Place } from '#core/place.ts';
import type { DependentKind } from '#editions/dependents.ts';
import type { Impact } from '#editions/impactOf.ts';
import { count, firstLine, safe, textWidth, wrapped } from './layout.ts';

const kindWords: Readonly<Record<DependentKind, string>> = {
  step: 'step',
  text: 'text',
  caption: 'caption',
  picture: 'picture',
  wiring: 'wiring row',
  code: 'code',
};

/** Each change with what is left to look at, numbered through; what was looked at is counted. */
export function printImpact({ impact, ticked }: ImpactReport): string {
  const head = ticked.length > 0 ? [`Ticked off: ${count(ticked.length, 'item')}.`] : [];
  const open = impact.reduce((sum, { items }) => sum + items.filter(({ done }) => !done).length, 0);
  const findings = impact.reduce((sum, one) => sum + one.findings.length, 0);
  if (open === 0 && findings === 0) head.push('Nothing is left to look at after changes.');
  let number = 0;
  const blocks = impact.flatMap((one) => {
    const lines = one.items
      .filter(({ done }) => !done)
      .flatMap(({ kind, place, why }) => [
        `${String(++number).padStart(4)}. ${kindWords[kind]}: ${where(place)}`,
        wrapped(safe(why), '      '),
      ]);
    return lines.length + one.findings.length === 0 ? [] : [printChange(one, lines)];
  });
  const way = open > 0 ? ['', 'To tick one off that needs no change: twicebuilt impact DIR --looked-at NUMBER'] : [];
  return `${[...head, ...blocks, ...way].join('\n')}\n`;
}

function printChange({ name, at, isGone, items, findings }: Impact, lines: readonly string[]): string {
  const done = items.filter((item) => item.done).length;
  return [
    `${safe(name)} ${isGone ? 'is gone since' : 'changed on'} ${at.slice(0, 10)}.${done > 0 ? ` Looked at: ${done}.` : ''}`,
    ...findings.map((finding) => wrapped(`Now found (${finding.check}): ${safe(finding.message)}`, '   ')),
    ...lines,
  ].join('\n');
}

function where(place: Place): string {
  if (place.kind !== 'text') return safe(place.file);
  return `${safe(place.file)}, line ${place.line} “${firstLine(place.quote, Math.max(20, textWidth() - place.file.length - 40))}”`;
}
