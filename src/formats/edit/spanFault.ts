import type { Edit } from '#core/edit.ts';

/** Why the spans of an edit do not fit a text, with what to do; null where they fit. */
export function spanFault(text: string, changes: Edit['changes']): { message: string; remedy: string } | null {
  let last = 0;
  for (const { span } of changes) {
    const [start, end] = span;
    if (!Number.isInteger(start) || !Number.isInteger(end) || start > end || end > text.length) {
      return fault(`The span ${start} to ${end} does not lie in the text of ${text.length} characters.`);
    }
    if (start < last) return fault(`The spans are not in order: one starts at ${start}, before ${last}.`);
    if (cutsCharacter(text, start) || cutsCharacter(text, end)) {
      return fault(`The span ${start} to ${end} cuts a character or an end of line in two.`);
    }
    last = end;
  }
  return null;
}

function fault(message: string): { message: string; remedy: string } {
  return { message, remedy: 'Read the file again, and make the change on what it says now.' };
}

function cutsCharacter(text: string, at: number): boolean {
  const before = text.charCodeAt(at - 1);
  const after = text.charCodeAt(at);
  const insidePair = before >= 0xd800 && before <= 0xdbff && after >= 0xdc00 && after <= 0xdfff;
  return insidePair || (before === 13 && after === 10);
}
