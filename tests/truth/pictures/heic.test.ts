import { execFileSync } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { hashOf, openFolder } from '#outside/files/openFolder.ts';
import { openPictures } from '#outside/pictures/openPictures.ts';

const folder = await openFolder(import.meta.dirname);
const pictures = await openPictures(folder, memoryCache());

test('a HEIC gives its size, camera, time and leaks, as exiftool wrote them', async () => {
  const bytes = new Uint8Array(await readFile(`${import.meta.dirname}/bench.heic`));
  expect(await pictures.inspect('bench.heic')).toEqual({
    ok: true,
    value: {
      hash: hashOf(bytes),
      bytes: bytes.length,
      kind: 'heic',
      width: 64,
      height: 48,
      takenAt: '2026-03-04T05:06:07+02:00',
      camera: 'Lintel One',
      leaks: { position: true, fields: ['position', 'serial number', 'owner'] },
    },
  });
  expect(await folder.read('SOURCE.md').then((source) => new TextDecoder().decode(source))).toContain(hashOf(bytes));
});

test('a HEIC is copied with the colour that heif-enc was given, and without what exiftool wrote into it', async () => {
  const copy = await pictures.clean({ shot: 'bench.heic', width: 64, format: 'png' }, 'bench');
  if (!copy.ok) throw new Error(copy.reason);
  expect(copy.value.asset).toMatchObject({ width: 64, height: 48 });
  expect(copy.value.removed).toEqual(['position', 'serial number', 'owner']);
  const folderOfCopy = await mkdtemp(path.join(tmpdir(), 'twicebuilt-heic-'));
  try {
    const file = path.join(folderOfCopy, 'copy.png');
    await writeFile(file, copy.value.data);
    const tags = execFileSync('exiftool', ['-G', '-a', '-s', file], { encoding: 'utf8' });
    expect(tags).not.toMatch(/GPS|Serial|Artist|Owner|Make|Model/);
    const wanted = execFileSync(
      'heif-convert',
      ['-q', '100', path.join(import.meta.dirname, 'bench.heic'), `${file}.png`],
      {
        encoding: 'utf8',
      },
    );
    expect(wanted).toContain('Written');
    const [ours, theirs] = await Promise.all([file, `${file}.png`].map(meanColour));
    for (const channel of [0, 1, 2])
      expect(Math.abs((ours?.[channel] ?? 0) - (theirs?.[channel] ?? 999))).toBeLessThan(2);
  } finally {
    await rm(folderOfCopy, { recursive: true });
  }
});

async function meanColour(file: string): Promise<number[]> {
  const { channels } = await sharp(file).stats();
  return channels.slice(0, 3).map(({ mean }) => mean);
}
