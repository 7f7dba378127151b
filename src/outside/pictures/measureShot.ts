import type { Result, ShotMeasures } from '#app/ports.ts';
import type { ShotKind } from '#core/shot.ts';
import { findBoard } from '#imaging/board/findBoard.ts';
import { measurePicture } from '#imaging/measures/measurePicture.ts';
import { findSubject } from '#imaging/subject/findSubject.ts';
import { decodePicture } from './decodePicture.ts';

/** Pictures are measured at this length: fine enough for focus, and a fraction of the work. */
const measuredLength = 1024;

/** Decodes a picture once and small, finds what it is about, and measures it there. */
export async function measureShot(kind: ShotKind, bytes: Uint8Array): Promise<Result<ShotMeasures>> {
  const decoded = await decodePicture(kind, bytes, measuredLength);
  if (!decoded.ok) return decoded;
  const board = findBoard(decoded.value);
  const { box, confidence } = findSubject(decoded.value, board);
  const [x, y, width, height] = box;
  const measures = measurePicture(decoded.value, { subject: { x, y, width, height } });
  return { ok: true, value: { ...measures, subject: { box, confidence }, board } };
}
