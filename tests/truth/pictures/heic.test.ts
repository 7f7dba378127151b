import { readFile } from 'node:fs/promises';
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

test('a HEIC cannot be copied yet, and the reason says what to do', async () => {
  expect(await pictures.clean({ shot: 'bench.heic', width: 64, format: 'jpeg' }, 'bench')).toEqual({
    ok: false,
    reason: 'HEIC pictures cannot be decoded yet. Export it as JPEG from your phone or picture program.',
  });
});
