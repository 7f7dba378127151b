import sharp from 'sharp';
import type { Result, ShotFacts } from '#app/ports.ts';
import type { ShotKind } from '#core/shot.ts';
import { cameraOf } from '#imaging/cameraOf.ts';
import { leaksOf } from '#imaging/leaksOf.ts';
import { readMovie } from '#imaging/readMovie.ts';
import { takenAtOf } from '#imaging/takenAtOf.ts';
import { collectMetadata } from './collectMetadata.ts';
import { decodeFailure } from './decodeFailure.ts';
import { headerGroups } from './headerGroups.ts';
import type { InspectJob } from './pictureJob.ts';

/** Longest side that any camera or scanner makes; a header that says more is broken or made to harm. */
const maximumSide = 100_000;

/** What a file's bytes tell. Nothing is decoded but headers. */
export async function inspectPicture(kind: ShotKind, job: InspectJob): Promise<Result<ShotFacts>> {
  const size = kind === 'clip' ? clipSize(job.bytes) : await pictureSize(kind, job.bytes);
  if (!size.ok) return size;
  const { width, height, createdAt } = size.value;
  if (width !== null && height !== null && Math.max(width, height) > maximumSide) {
    return { ok: false, reason: `The picture says that it is ${width} × ${height} pixels, which no camera makes.` };
  }
  const { fields, embedded, groups } = collectMetadata(kind, job.bytes);
  return {
    ok: true,
    value: {
      hash: job.hash,
      bytes: job.fileBytes,
      kind,
      width,
      height,
      takenAt: takenAtOf(fields) ?? createdAt,
      camera: cameraOf(fields),
      leaks: leaksOf([...fields, ...embedded], [...groups, ...size.value.groups]),
    },
  };
}

interface Size {
  readonly width: number | null;
  readonly height: number | null;
  readonly createdAt: string | null;
  readonly groups: readonly string[];
}

function clipSize(bytes: Uint8Array): Result<Size> {
  return { ok: true, value: { ...readMovie(bytes), groups: [] } };
}

async function pictureSize(kind: ShotKind, bytes: Uint8Array): Promise<Result<Size>> {
  try {
    const header = await sharp(bytes, { limitInputPixels: false }).metadata();
    return { ok: true, value: { ...header.autoOrient, createdAt: null, groups: headerGroups(header) } };
  } catch (error) {
    return { ok: false, reason: decodeFailure(error, kind, bytes) };
  }
}
