import type { Edit } from '#core/edit.ts';
import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { changedRegions, type Region } from './changedRegions.ts';

/**
 * Carries an edit that was made on `older` onto `newer`. Null where a span touches what has changed between them,
 * or where it cannot be told which of several like words was meant.
 */
export function mergeEdit(older: SourceText, newer: SourceText, edit: Edit): Edit | null {
  if (edit.file !== older.file || edit.base !== older.hash || newer.file !== older.file) return null;
  const regions = changedRegions(older.text, newer.text);
  const reaches = regions.map((region) => reachOf(older.text, newer.text, region));
  const changes: Edit['changes'][number][] = [];
  for (const { span, text } of edit.changes) {
    if (regions.some((region, i) => meets(span, reaches[i] ?? region.old, region))) return null;
    const shift = shiftAt(regions, span[0]);
    changes.push({ span: [span[0] + shift, span[1] + shift], text });
  }
  return { ...edit, base: newer.hash, changes };
}

function shiftAt(regions: readonly Region[], offset: number): number {
  let shift = 0;
  for (const { old, now } of regions) if (old[1] <= offset) shift = now[1] - old[1];
  return shift;
}

/** Whether a span meets a change. Words beside whole lines that came or went are apart from them; a place is not. */
function meets(span: Span, reach: Span, { wholeLines }: Region): boolean {
  if (wholeLines && span[0] < span[1]) return reach[0] < span[1] && reach[1] > span[0];
  return reach[0] <= span[1] && reach[1] >= span[0];
}

/**
 * The span of the older text in which a change may have taken place. Words put in or taken out after their like could
 * have been any of them: the first 'x, ' of 'x, x, ' as well as the second. A region lies behind all of them.
 */
function reachOf(older: string, newer: string, { old, now, wholeLines }: Region): Span {
  if (old[0] !== old[1] && now[0] !== now[1]) return old;
  const [text, [start, end]] = old[0] === old[1] ? [newer, now] : [older, old];
  let left = 0;
  while (start - left > 0 && text[start - left - 1] === text[end - left - 1]) left++;
  if (!wholeLines) return [old[0] - left, old[1]];
  // Lines can only have moved past whole lines.
  const startsLine = /(?:^|[\r\n])$/.test(text.slice(0, start - left));
  const cut = startsLine ? 0 : text.slice(start - left, start).search(/(?<=[\r\n])(?![\r\n])/);
  return [old[0] - (cut < 0 ? 0 : left - cut), old[1]];
}
