import type { Build } from '#core/build.ts';
import type { Edit } from '#core/edit.ts';
import type { WrittenFact } from '#core/step.ts';

/** Adds items to a fact of a step; null where the fact is no plain list on one line. */
export function addToFact(build: Build, fact: WrittenFact, items: readonly string[], why: string): Edit | null {
  const { file, span, quote } = fact.place;
  const source = build.texts.get(file);
  if (source === undefined || quote.trim() !== fact.value.trim() || /[\n.]\s*$|\n/.test(quote)) return null;
  const isNone = /^(?:none|nothing|-|–|—)$/i.test(fact.value.trim());
  const text = items.join(', ');
  const change = isNone ? { span, text } : { span: [span[1], span[1]] as const, text: `, ${text}` };
  return { file, base: source.hash, changes: [change], why };
}
