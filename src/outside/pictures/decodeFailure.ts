import type { ShotKind } from '#core/shot.ts';
import { isCutOff } from '#imaging/isCutOff.ts';

/** A plain sentence, with what to do, for a picture that the decoder could not read. */
export function decodeFailure(error: unknown, kind: ShotKind, bytes: Uint8Array): string {
  const message = error instanceof Error ? error.message : String(error);
  if (/timeout/i.test(message)) {
    return 'The picture took too long to decode, and was given up. Open it in a picture program and save it again.';
  }
  if (isCutOff(kind, bytes)) {
    return 'The picture is cut off: the end of the file is missing. Copy it again from where it came from.';
  }
  if (kind === 'svg') return `The drawing could not be read (${firstLine(message)}). Export it again.`;
  return `The picture is damaged and could not be decoded (${firstLine(message)}). Copy it again from where it came from.`;
}

function firstLine(message: string): string {
  return message.split('\n', 1)[0]?.trim() ?? '';
}
