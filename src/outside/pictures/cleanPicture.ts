import sharp, { type Metadata, type OutputInfo, type Sharp } from 'sharp';
import type { CleanReport, Result } from '#app/ports.ts';
import { assert } from '#core/failure.ts';
import type { AssetWant, ShotKind } from '#core/shot.ts';
import { foreignParts } from '#imaging/foreignParts.ts';
import { leaksOf } from '#imaging/leaksOf.ts';
import { plainProfile } from '#imaging/plainProfile.ts';
import { collectMetadata } from './collectMetadata.ts';
import { decodeFailure } from './decodeFailure.ts';
import { headerGroups } from './headerGroups.ts';
import { isHevc, openPixels, refusalOf } from './openPixels.ts';
import type { CleanJob } from './pictureJob.ts';
import { replaceProfile } from './replaceProfile.ts';

/**
 * A copy for publishing: upright, no wider than wanted, in its own colour space, and without anything that is not
 * needed to show it. A drawing is rendered at the wanted width. The same bytes and wish give the same bytes.
 */
export async function cleanPicture(kind: ShotKind, job: CleanJob): Promise<Result<CleanReport>> {
  if (kind === 'clip') return { ok: false, reason: 'A clip is no picture. Publish a still of it instead.' };
  let header: Metadata;
  let encoded: { data: Uint8Array; info: OutputInfo };
  try {
    header = await sharp(job.bytes, { limitInputPixels: false }).metadata();
    const refusal = refusalOf(header);
    if (refusal !== null) return { ok: false, reason: refusal };
    const pixels = await openPixels(kind, header, job.bytes, job.want.width);
    encoded = await encode(pixels.resize({ width: job.want.width, withoutEnlargement: true }), header, job.want.format);
  } catch (error) {
    return { ok: false, reason: decodeFailure(error, kind, job.bytes) };
  }
  const profile = profileFor(header);
  const isChanged = profile !== null && (profile !== header.icc || isHevc(header));
  const data = isChanged ? replaceProfile(job.want.format, encoded.data, profile) : encoded.data;
  await proveClean(job.want.format, data, profile);
  return { ok: true, value: reportOf(kind, header, job, data, encoded.info) };
}

/** Reads a copy back: whatever is left in it beyond pixels and their colours is a mistake of ours. */
async function proveClean(format: AssetWant['format'], data: Uint8Array, profile: Uint8Array | null): Promise<void> {
  const foreign = foreignParts(format, data);
  assert(foreign.length === 0, `a clean copy holds ${foreign.join(', ')}`);
  const { icc, exif, xmp, iptc, orientation } = await sharp(data).metadata();
  assert(!exif && !xmp && !iptc && !orientation, 'a clean copy holds metadata');
  assert(profile ? icc?.equals(profile) : !icc, 'a clean copy has the profile that was decided on');
}

/**
 * The profile that a copy carries: red, green and blue keep theirs, wide ones too, without what it says of a screen.
 * Everything else is converted to sRGB, which needs none.
 */
function profileFor({ space, icc }: Metadata): Uint8Array | null {
  return icc && (space === 'srgb' || space === 'rgb16') ? plainProfile(icc) : null;
}

function reportOf(
  kind: ShotKind,
  header: Metadata,
  { bytes, want, name }: CleanJob,
  data: Uint8Array,
  { width, height }: OutputInfo,
): CleanReport {
  const { fields, embedded, groups } = collectMetadata(kind, bytes);
  const { fields: removed } = leaksOf([...fields, ...embedded], [...groups, ...headerGroups(header)]);
  // A copy of its own: what the encoder hands out may be part of a larger, shared buffer.
  return { asset: { ...want, width, height, name, bytes: data.length }, data: Uint8Array.from(data), removed };
}

function encode(image: Sharp, header: Metadata, format: AssetWant['format']) {
  const coloured = profileFor(header) ? image.keepIccProfile() : image.toColourspace('srgb');
  return encoder(coloured, format).toBuffer({ resolveWithObject: true });
}

/**
 * JPEG keeps colour at full resolution: halved, it blurs thin coloured wires and print on coloured boards, for
 * about a seventh of the size. WebP cannot, so its halving is done with care for edges.
 */
function encoder(image: Sharp, format: AssetWant['format']): Sharp {
  switch (format) {
    case 'jpeg':
      return image.flatten({ background: '#ffffff' }).jpeg({ quality: 82, chromaSubsampling: '4:4:4' });
    case 'webp':
      return image.webp({ quality: 82, smartSubsample: true });
    case 'png':
      return image.png({ compressionLevel: 9 });
  }
}
