import sharp, { type Metadata, type Sharp } from 'sharp';
import type { ShotKind } from '#core/shot.ts';

export const maximumPixels = 100_000_000;
const timeLimitSeconds = 30;

/** Dots per inch at which a drawing's own units are pixels; and the most that the renderer takes. */
const drawingDensity = 72;
const maximumDensity = 2400;

/** True where the picture's pixels come from a decoder that knows nothing of its colour profile. */
export function isHevc({ format, compression }: Metadata): boolean {
  return format === 'heif' && compression !== 'av1';
}

/** Why a picture is not decoded at all, told by its header; null for one that is. */
export function refusalOf({ width, height }: Metadata): string | null {
  if (width * height <= maximumPixels) return null;
  const megapixels = Math.round((width * height) / 1e6);
  return `The picture has ${megapixels} megapixels; at most 100 can be handled. Make a smaller copy.`;
}

/** The upright pixels of a picture, not decoded yet where that can wait; a drawing comes at `width` at least. */
export async function openPixels(kind: ShotKind, header: Metadata, bytes: Uint8Array, width: number): Promise<Sharp> {
  if (isHevc(header)) return limited(await decodeHevc(bytes));
  const density =
    kind === 'svg' ? Math.min(maximumDensity, drawingDensity * Math.max(1, width / header.width)) : undefined;
  return limited(
    sharp(bytes, {
      // Below 'error' lie warnings that files straight from common cameras give.
      failOn: 'error',
      limitInputPixels: maximumPixels,
      density: density ?? drawingDensity,
    }),
  ).autoOrient();
}

function limited(image: Sharp): Sharp {
  return image.timeout({ seconds: timeLimitSeconds });
}

/** The decoder turns and mirrors as the container says, so that what comes is upright. */
async function decodeHevc(bytes: Uint8Array): Promise<Sharp> {
  // Loaded only where a phone's picture needs it: the decoder takes long to start.
  const { default: decode } = await import('heic-decode');
  const { data, width, height } = await decode({ buffer: bytes });
  return sharp(new Uint8Array(data.buffer, data.byteOffset, data.byteLength), {
    raw: { width, height, channels: 4 },
    limitInputPixels: maximumPixels,
  });
}
