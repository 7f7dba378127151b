import { webcrypto } from 'node:crypto';
import type { FolderPort, Result } from '#app/ports.ts';
import { boxHeaderBytes, readBoxHeader } from '#imaging/boxes.ts';
import { headBytes, kindOfBytes } from '#imaging/kindOfBytes.ts';
import { type DiskFolder, isDiskFolder } from '../files/openFolder.ts';

/** A picture's bytes, or a clip's without its media data, under the hash of the whole file. */
export interface PictureFile {
  readonly hash: string;
  readonly bytes: Uint8Array;
  readonly fileBytes: number;
}

const megabyte = 1 << 20;
/** Larger than what any camera writes as one picture. */
const maximumPictureBytes = 256 * megabyte;
/** Of a clip, only the boxes that describe it are read: some kilobytes, some megabytes with long tables. */
const maximumHeaderBytes = 64 * megabyte;

/** Reads a picture whole, and of a clip only what describes it. Throws `Failure` where the file cannot be read. */
export async function readPictureFile(folder: FolderPort, path: string): Promise<Result<PictureFile>> {
  if (isDiskFolder(folder)) {
    const kind = kindOfBytes(await folder.readHead(path, headBytes));
    if (kind === 'clip') return { ok: true, value: await readClip(folder, path) };
    const fileBytes = await folder.sizeOf(path);
    if (fileBytes > maximumPictureBytes) {
      const size = Math.round(fileBytes / megabyte);
      return { ok: false, reason: `The file has ${size} MB; a picture may have 256. Make a smaller copy.` };
    }
  }
  const bytes = await folder.read(path);
  return { ok: true, value: { hash: await sha256(bytes), bytes, fileBytes: bytes.length } };
}

async function readClip(folder: DiskFolder, path: string): Promise<PictureFile> {
  const fileBytes = await folder.sizeOf(path);
  const kept: Uint8Array[] = [];
  let keptBytes = 0;
  for (let at = 0; at < fileBytes; ) {
    const found = readBoxHeader(await folder.readRange(path, at, boxHeaderBytes));
    if (!found) break;
    const size = found.size ?? fileBytes - at;
    if (found.type !== 'mdat' && found.type !== 'free' && keptBytes + size <= maximumHeaderBytes) {
      kept.push(await folder.readRange(path, at, size));
      keptBytes += size;
    }
    at += size;
  }
  return { hash: await folder.hash(path), bytes: new Uint8Array(Buffer.concat(kept)), fileBytes };
}

/** Done by a thread of the system, so that this one stays free. */
async function sha256(bytes: Uint8Array): Promise<string> {
  return Buffer.from(await webcrypto.subtle.digest('SHA-256', bytes)).toString('hex');
}
