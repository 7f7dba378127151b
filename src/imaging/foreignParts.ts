import { jpegSegments } from './jpegSegments.ts';
import { latin1 } from './metadataBlock.ts';
import { pngChunks } from './pngChunks.ts';
import { readJpeg } from './readJpeg.ts';
import { riffChunks } from './riffChunks.ts';

const png = new Set(['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS', 'gAMA', 'cHRM', 'sRGB', 'iCCP', 'sBIT', 'pHYs', 'bKGD']);
const webp = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ICCP']);
const jpegApplication = new Set(['JFIF\0', 'ICC_P', 'Adobe']);

/**
 * Names of the parts of a picture file that neither the pixels nor their colours need: what a clean copy must not
 * have. Everything that is not known to be needed counts, so that nothing passes by being unknown.
 */
export function foreignParts(format: 'jpeg' | 'png' | 'webp', bytes: Uint8Array): string[] {
  switch (format) {
    case 'jpeg':
      return foreignInJpeg(bytes);
    case 'png': {
      const { chunks, end } = pngChunks(bytes);
      return [...chunks.map(({ type }) => type).filter((type) => !png.has(type)), ...tail(bytes, end)];
    }
    case 'webp': {
      const { chunks, end } = riffChunks(bytes);
      return [...chunks.map(({ type }) => type).filter((type) => !webp.has(type)), ...tail(bytes, end)];
    }
  }
}

function foreignInJpeg(bytes: Uint8Array): string[] {
  const { segments, end } = jpegSegments(bytes);
  const named = segments.flatMap(({ marker, data }) => {
    if (marker === 0xfe) return ['COM'];
    const isApplication = marker >= 0xe0 && marker <= 0xef;
    const name = latin1(data.subarray(0, 5));
    return isApplication && !jpegApplication.has(name) ? [`APP${marker - 0xe0} ${name}`] : [];
  });
  const inside = readJpeg(bytes).map(({ kind }) => kind);
  return [...named, ...inside, ...tail(bytes, end)];
}

function tail(bytes: Uint8Array, end: number | null): string[] {
  return end === bytes.length ? [] : ['something after the end'];
}
