import sharp from 'sharp';

/** Traces are stored at this share of their light, so that what is brighter than paper keeps its colour. */
export const headroom = 0.25;

/** A 16-bit linear trace as numbers, 1 for white paper in full light; three a pixel. */
export async function readLight(file) {
  const { width, height, data } = await readWords(file);
  return { width, height, data: Float32Array.from(data, (word) => word / 65535 / headroom) };
}

/** Distance of each pixel, in distances of the scene's focus. The fog pass gives 1 - exp(-distance / focus). */
export async function readDistance(file) {
  const { width, height, data } = await readWords(file);
  const far = new Float32Array(width * height);
  for (let i = 0; i < far.length; i++) far[i] = -Math.log(Math.max(1e-5, 1 - data[i * 3] / 65535));
  return { width, height, data: far };
}

async function readWords(file) {
  const { data, info } = await sharp(file)
    .removeAlpha()
    .toColourspace('rgb16')
    .raw({ depth: 'ushort' })
    .toBuffer({ resolveWithObject: true });
  return {
    width: info.width,
    height: info.height,
    data: new Uint16Array(data.buffer, data.byteOffset, data.byteLength / 2),
  };
}
