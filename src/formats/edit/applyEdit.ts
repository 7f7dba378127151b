import type { Edit } from '#core/edit.ts';
import type { Place } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { type Encoding, placeOf, type SourceText } from '#core/sourceText.ts';
import { decodeText, encodeText, firstUnencodable } from '../text/decodeText.ts';
import { spanFault } from './spanFault.ts';
import { spliceBytes } from './spliceBytes.ts';

/** What takes an edit back: spans of the text after it, and how the file spelled its characters before it. */
export interface Inverse {
  readonly encoding: Encoding;
  readonly bom: boolean;
  readonly changes: Edit['changes'];
}

export type Applied =
  | { readonly ok: true; readonly bytes: Uint8Array; readonly text: string; readonly inverse: Inverse }
  | { readonly ok: false; readonly problem: Problem };

/**
 * The file's bytes after an edit. Only the replaced words are encoded; the result is read back, and every byte outside
 * the spans is proved to be what it was. Refused, with nothing changed, where the edit was made on another version,
 * its spans are not in order, or the file's encoding cannot hold the new words.
 */
export function applyEdit(source: SourceText, bytes: Uint8Array, edit: Edit): Applied {
  const fault = editFault(source, bytes, edit);
  if (fault !== null) return { ok: false, problem: fault };
  const expected = spliceText(source.text, edit.changes);
  const spliced = spliceBytes(source, bytes, edit.changes);
  const inverse = inverseOf(source, edit.changes);
  // An end of line that grew together out of two halves could not be taken apart again.
  if (spanFault(expected, inverse.changes) !== null) return refused(source, edit, joinsLineEnd);
  const again = decodeText(source.file, spliced, '');
  if (!again.ok || again.source.text !== expected) return refused(source, edit, readsOtherwise);
  if (!isEqual(encodeText(source, expected), spliced)) return refused(source, edit, readsOtherwise);
  return { ok: true, bytes: spliced, text: expected, inverse };
}

/** Takes an edit back: `source` and `bytes` are those of the file after it. */
export function undoEdit(source: SourceText, bytes: Uint8Array, inverse: Inverse): Applied {
  const asBefore: SourceText = { ...source, encoding: inverse.encoding, bom: inverse.bom };
  return applyEdit(asBefore, bytes, {
    file: source.file,
    base: source.hash,
    changes: inverse.changes,
    why: 'take back the last change',
  });
}

/** The text with each span replaced. Spans are ascending and disjoint. */
export function spliceText(text: string, changes: Edit['changes']): string {
  const pieces: string[] = [];
  let at = 0;
  for (const { span, text: replacement } of changes) {
    pieces.push(text.slice(at, span[0]), replacement);
    at = span[1];
  }
  pieces.push(text.slice(at));
  return pieces.join('');
}

function inverseOf(source: SourceText, changes: Edit['changes']): Inverse {
  let shift = 0;
  const back = changes.map(({ span, text }) => {
    const start = span[0] + shift;
    shift += text.length - (span[1] - span[0]);
    return { span: [start, start + text.length] as const, text: source.text.slice(span[0], span[1]) };
  });
  return { encoding: source.encoding, bom: source.bom, changes: back };
}

interface Fault {
  readonly message: string;
  readonly remedy: string;
}

const joinsLineEnd: Fault = {
  message: 'The change would make one end of line out of a carriage return and a line feed that stand apart.',
  remedy: 'Change the whole line.',
};
const readsOtherwise: Fault = {
  message: 'After the change the file would no longer be read as it is written.',
  remedy: 'Save the file as UTF-8 first, then make the change again.',
};

function editFault(source: SourceText, bytes: Uint8Array, edit: Edit): Problem | null {
  const fault =
    versionFault(source, bytes, edit) ?? spanFault(source.text, edit.changes) ?? spellingFault(source, edit);
  return fault === null ? null : refused(source, edit, fault).problem;
}

function versionFault(source: SourceText, bytes: Uint8Array, edit: Edit): Fault | null {
  if (edit.file === source.file && edit.base === source.hash && isEqual(encodeText(source, source.text), bytes)) {
    return null;
  }
  return {
    message: 'The change was made on another version of the file.',
    remedy: 'Read the file again, and make the change on what it says now.',
  };
}

function spellingFault(source: SourceText, edit: Edit): Fault | null {
  for (const { text } of edit.changes) {
    const lacking = firstUnencodable(source.encoding, text);
    if (lacking === null) continue;
    return {
      message: `The file is written in ${source.encoding}, which has no spelling for '${lacking.char}'.`,
      remedy: 'Save the file as UTF-8 first, or write the word without that character.',
    };
  }
  return null;
}

function refused(source: SourceText, edit: Edit, fault: Fault): { ok: false; problem: Problem } {
  return { ok: false, problem: { place: placeOfEdit(source, edit), ...fault } };
}

function placeOfEdit(source: SourceText, edit: Edit): Place {
  const span = edit.changes[0]?.span;
  const inside = span !== undefined && span[0] >= 0 && span[0] <= span[1] && span[1] <= source.text.length;
  return inside ? placeOf(source, span) : { kind: 'file', file: source.file };
}

function isEqual(a: Uint8Array | null, b: Uint8Array): boolean {
  return a !== null && a.length === b.length && a.every((byte, i) => byte === b[i]);
}
