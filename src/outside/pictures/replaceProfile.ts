import { crc32, deflateSync } from 'node:zlib';
import type { AssetWant } from '#core/shot.ts';
import { latin1 } from '#imaging/metadataBlock.ts';
import { pngChunks } from '#imaging/pngChunks.ts';
import { riffChunks } from '#imaging/riffChunks.ts';

/** A picture that our encoder wrote, with another colour profile in place of its own. Pixels are not touched. */
export function replaceProfile(format: AssetWant['format'], picture: Uint8Array, profile: Uint8Array): Uint8Array {
  switch (format) {
    case 'jpeg':
      return inJpeg(picture, profile);
    case 'png':
      return inPng(picture, profile);
    case 'webp':
      return inWebp(picture, profile);
  }
}

const profileMark = 'ICC_PROFILE\0';
/** What a segment of 65535 bytes holds besides its length, the mark and two numbers (ICC.1 annex B.4). */
const segmentRoom = 65_535 - 2 - profileMark.length - 2;

function inJpeg(picture: Uint8Array, profile: Uint8Array): Uint8Array {
  const kept: Uint8Array[] = [];
  let at = 2;
  for (; picture[at] === 0xff && ((picture[at + 1] ?? 0) & 0xf0) === 0xe0; ) {
    const end = at + 2 + ((picture[at + 2] ?? 0) << 8) + (picture[at + 3] ?? 0);
    const holdsProfile = latin1(picture.subarray(at + 4, at + 4 + profileMark.length)) === profileMark;
    if (!holdsProfile) kept.push(picture.subarray(at, end));
    at = end;
  }
  const count = Math.ceil(profile.length / segmentRoom);
  const segments = Array.from({ length: count }, (_, i) => {
    const part = profile.subarray(i * segmentRoom, (i + 1) * segmentRoom);
    const length = 2 + profileMark.length + 2 + part.length;
    return Buffer.concat([
      Buffer.from([0xff, 0xe2, length >> 8, length & 0xff]),
      Buffer.from(profileMark, 'latin1'),
      Buffer.from([i + 1, count]),
      part,
    ]);
  });
  return Buffer.concat([picture.subarray(0, 2), ...kept, ...segments, picture.subarray(at)]);
}

function inPng(picture: Uint8Array, profile: Uint8Array): Uint8Array {
  const chunks = pngChunks(picture).chunks.map(({ type, data }) =>
    pngChunk(type, type === 'iCCP' ? Buffer.concat([Buffer.from('icc\0\0', 'latin1'), deflateSync(profile)]) : data),
  );
  return Buffer.concat([picture.subarray(0, 8), ...chunks]);
}

function pngChunk(type: string, data: Uint8Array): Buffer {
  const chunk = Buffer.alloc(12 + data.length);
  chunk.writeUInt32BE(data.length);
  chunk.write(type, 4, 'latin1');
  chunk.set(data, 8);
  chunk.writeUInt32BE(crc32(chunk.subarray(4, 8 + data.length)), 8 + data.length);
  return chunk;
}

function inWebp(picture: Uint8Array, profile: Uint8Array): Uint8Array {
  const chunks = riffChunks(picture).chunks.map(({ type, data }) => riffChunk(type, type === 'ICCP' ? profile : data));
  const body = Buffer.concat([Buffer.from('WEBP', 'latin1'), ...chunks]);
  return riffChunk('RIFF', body);
}

function riffChunk(type: string, data: Uint8Array): Buffer {
  const chunk = Buffer.alloc(8 + data.length + (data.length % 2));
  chunk.write(type, 'latin1');
  chunk.writeUInt32LE(data.length, 4);
  chunk.set(data, 8);
  return chunk;
}
