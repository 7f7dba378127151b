import sharp, { type Metadata, type Sharp } from 'sharp';
import type { CleanReport, Result } from '#app/ports.ts';
import { assert } from '#core/failure.ts';
import type { AssetWant, ShotKind } from '#core/shot.ts';
import { foreignParts } from '#imaging/foreignParts.ts';
import { leaksOf } from '#imaging/leaksOf.ts';
import { collectMetadata } from './collectMetadata.ts';
import { decodeFailure } from './decodeFailure.ts';
import type { CleanJob } from './pictureJob.ts';

const maximumPixels = 100_000_000;
const timeLimitSeconds = 30;
/** Dots per inch at which a drawing's own units are pixels; and the most that the renderer takes. */
const drawingDensity = 72;
const maximumDensity = 2400;

/**
 * A copy for publishing: upright, no wider than wanted, in its own colour space, and without anything that is not
 * needed to show it. A drawing is rendered at the wanted width. The same bytes and wish give the same bytes.
 */
export async function cleanPicture(kind: ShotKind, job: CleanJob): Promise<Result<CleanReport>> {
  if (kind === 'clip') return { ok: false, reason: 'A clip is no picture. Publish a still of it instead.' };
  let copy: { data: Buffer; width: number; height: number };
  try {
    const header = await sharp(job.bytes, { limitInputPixels: false }).metadata();
    const refusal = refusalOf(header);
    if (refusal !== null) return { ok: false, reason: refusal };
    const { data, info } = await pipeline(kind, header, job).toBuffer({ resolveWithObject: true });
    copy = { data, width: info.width, height: info.height };
  } catch (error) {
    return { ok: false, reason: decodeFailure(error, kind, job.bytes) };
  }
  const foreign = foreignParts(job.want.format, copy.data);
  assert(foreign.length === 0, `a clean copy holds ${foreign.join(', ')}`);
  return { ok: true, value: reportOf(kind, job, copy) };
}

function reportOf(kind: ShotKind, job: CleanJob, copy: { data: Buffer; width: number; height: number }): CleanReport {
  const { fields, embedded, groups } = collectMetadata(kind, job.bytes);
  const asset = { ...job.want, width: copy.width, height: copy.height, name: job.name, bytes: copy.data.length };
  // A copy of its own: what the encoder hands out may be part of a larger, shared buffer.
  return { asset, data: Uint8Array.from(copy.data), removed: leaksOf([...fields, ...embedded], groups).fields };
}

function refusalOf({ width, height, format, compression }: Metadata): string | null {
  if (format === 'heif' && compression !== 'av1') {
    return 'HEIC pictures cannot be decoded yet. Export it as JPEG from your phone or picture program.';
  }
  if (width * height > maximumPixels) {
    const megapixels = Math.round((width * height) / 1e6);
    return `The picture has ${megapixels} megapixels; at most 100 can be handled. Make a smaller copy.`;
  }
  return null;
}

function pipeline(kind: ShotKind, header: Metadata, { bytes, want }: CleanJob): Sharp {
  const wider = kind === 'svg' ? want.width / header.width : 1;
  const density = Math.min(maximumDensity, drawingDensity * Math.max(1, wider));
  const image = sharp(bytes, {
    // Below 'error' lie warnings that files straight from common cameras give.
    failOn: 'error',
    limitInputPixels: maximumPixels,
    density: kind === 'svg' ? density : drawingDensity,
  })
    .timeout({ seconds: timeLimitSeconds })
    .autoOrient()
    .resize({ width: want.width, withoutEnlargement: true });
  return encode(keepColours(image, header), want.format);
}

/** Red, green and blue keep their profile, wide ones too; everything else is converted to sRGB, which needs none. */
function keepColours(image: Sharp, { space }: Metadata): Sharp {
  return space === 'srgb' || space === 'rgb16' ? image.keepIccProfile() : image.toColourspace('srgb');
}

/**
 * JPEG keeps colour at full resolution: halved, it blurs thin coloured wires and print on coloured boards, for
 * about a seventh of the size. WebP cannot, so its halving is done with care for edges.
 */
function encode(image: Sharp, format: AssetWant['format']): Sharp {
  switch (format) {
    case 'jpeg':
      return image.flatten({ background: '#ffffff' }).jpeg({ quality: 82, chromaSubsampling: '4:4:4' });
    case 'webp':
      return image.webp({ quality: 82, smartSubsample: true });
    case 'png':
      return image.png({ compressionLevel: 9 });
  }
}
