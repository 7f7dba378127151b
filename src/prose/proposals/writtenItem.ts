import type { Part, Ref } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import type { WrittenFact } from '#core/step.ts';
import { parseRefs } from '#notation/refs.ts';
import { itemsOf } from '../facts/reading.ts';
import { usesOf } from '../facts/readUses.ts';
import type { KnownThings } from '../knownThings.ts';

/**
 * A part as a maker would write it into a step's facts: its references, else its shortest name that is read as this
 * part again, with the number where it is more than one. Null where no name of it is read as that part.
 */
export function writtenPart(part: Part, refs: readonly Ref[], count: number | null, known: KnownThings): string | null {
  if (refs.length > 0) {
    const written = writtenRefs(refs);
    return readsAs(written, part, null, known)
      ? written
      : (refs.find((ref) => readsAs(ref, part, null, known)) ?? null);
  }
  const times = count === null || count === 1 ? '' : ` × ${count}`;
  for (const name of namesOf(part)) {
    const forms = [`${name}${times}`, ...(times === '' ? [] : [`${count} × ${name}`])];
    const written = forms.find((form) => readsAs(form, part, count ?? 1, known));
    if (written !== undefined) return written;
  }
  return null;
}

/** `R1–R3, C2`. */
function writtenRefs(refs: readonly Ref[]): string {
  const parts: string[] = [];
  let at = 0;
  while (at < refs.length) {
    let end = at;
    while (
      end + 1 < refs.length &&
      parseRefs(`${refs[at]}–${refs[end + 1]}`).refs.join() === refs.slice(at, end + 2).join()
    ) {
      end++;
    }
    if (end - at >= 2) parts.push(`${refs[at]}–${refs[end]}`);
    else parts.push(...refs.slice(at, end + 1));
    at = end + 1;
  }
  return parts.join(', ');
}

/** Names from the shortest that a maker would use to the one that always fits. */
function namesOf(part: Part): string[] {
  const plain = part.description.replace(/\s+/g, ' ').trim();
  const main = plain.split(/\s*(?:[,;:([]|\s[-–—]\s|\s(?:with|for|by|from|incl\.?|including)\s)/u)[0] ?? plain;
  const value = part.value.is === 'unknown' ? null : part.value.claims[0].value.text;
  const valued = value === null ? [] : [`${value} ${main.toLowerCase()}`];
  return [main, ...valued, plain.replace(/[,;]/g, ''), part.mpn ?? '', part.id].filter((name) => name !== '');
}

function readsAs(written: string, part: Part, amount: number | null, known: KnownThings): boolean {
  if (/[`*_[\]<>]|^\W/u.test(written)) return false;
  const uses = itemsOf(factOf(written)).flatMap((item) => usesOf(item, known));
  const total = uses.reduce((sum, use) => sum + use.amount.n, 0);
  return uses.length > 0 && uses.every((use) => use.part === part.id) && (amount === null || total === amount);
}

function factOf(value: string): WrittenFact {
  const place: TextPlace = { kind: 'text', file: '', span: [0, value.length], line: 1, column: 1, quote: value };
  return { label: 'parts', value, place };
}
