import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { rolldown } from 'rolldown';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { openPictures } from '#outside/pictures/openPictures.ts';
import { openCrewOfWorkers } from '#outside/pictures/pictureCrew.ts';
import type { InspectJob } from '#outside/pictures/pictureJob.ts';

let folder: string;

beforeAll(async () => {
  // Inside the project, so that the bundled worker finds its packages.
  const cache = path.resolve('node_modules/.cache');
  await mkdir(cache, { recursive: true });
  folder = await mkdtemp(path.join(cache, 'twicebuilt-test-'));
});

afterAll(() => rm(folder, { recursive: true, force: true }));

const job = (word: string): InspectJob => ({
  do: 'inspect',
  bytes: new TextEncoder().encode(word),
  hash: word,
  fileBytes: word.length,
});

/** A worker that does what the bytes of its job say. */
async function scriptedWorker(): Promise<URL> {
  const file = path.join(folder, 'scripted.mjs');
  await writeFile(
    file,
    `import { parentPort, threadId } from 'node:worker_threads';
     parentPort.on('message', ({ id, job }) => {
       const word = new TextDecoder().decode(job.bytes);
       if (word === 'exit') process.exit(3);
       if (word === 'throw') setTimeout(() => { throw new Error('crash'); });
       else if (word === 'hang') for (;;);
       else if (word === 'broken') parentPort.postMessage({ id, broken: 'a mistake of ours' });
       else parentPort.postMessage({ id, answer: { ok: true, value: { word, threadId } } });
     });`,
  );
  return pathToFileURL(file);
}

describe('a crew of workers', () => {
  test.each(['exit', 'throw'])(
    'gives a reason for a picture over which a worker dies by %s, and goes on',
    async (end) => {
      const crew = openCrewOfWorkers(await scriptedWorker(), { limitMs: 20_000 });
      const before = await crew.run(job('fine'));
      expect(await crew.run(job(end))).toMatchObject({ ok: false, reason: expect.stringMatching(/broke down/) });
      const after = await crew.run(job('fine'));
      expect(after).toMatchObject({ ok: true, value: { word: 'fine' } });
      expect(after).not.toEqual(before);
      await crew.close();
    },
  );

  test('gives up a picture that takes too long, and goes on with another worker', async () => {
    const crew = openCrewOfWorkers(await scriptedWorker(), { limitMs: 300 });
    expect(await crew.run(job('hang'))).toMatchObject({ ok: false, reason: expect.stringMatching(/too long/) });
    expect(await crew.run(job('fine'))).toMatchObject({ ok: true });
    await crew.close();
  });

  test('keeps one worker for jobs that come one after the other', async () => {
    const crew = openCrewOfWorkers(await scriptedWorker(), { limitMs: 20_000 });
    expect(await crew.run(job('fine'))).toEqual(await crew.run(job('fine')));
    await crew.close();
  });

  test('passes a mistake of ours on loudly', async () => {
    const crew = openCrewOfWorkers(await scriptedWorker(), { limitMs: 20_000 });
    await expect(crew.run(job('broken'))).rejects.toThrow('a mistake of ours');
    await crew.close();
  });

  test('ends a job with a Failure when it is closed over it', async () => {
    const crew = openCrewOfWorkers(await scriptedWorker(), { limitMs: 20_000 });
    const running = crew.run(job('hang')).catch((error: unknown) => error);
    await new Promise((resolve) => setTimeout(resolve, 100));
    await crew.close();
    expect(await running).toMatchObject({ name: 'Failure', code: 'cancelled' });
    await expect(crew.run(job('fine'))).rejects.toMatchObject({ code: 'cancelled' });
  });
});

describe('the bundled worker', () => {
  let workerFile: URL;

  beforeAll(async () => {
    const bundle = await rolldown({
      input: { pictureWorker: 'src/outside/pictureWorker.ts' },
      platform: 'node',
      external: (id) => !id.startsWith('.') && !id.startsWith('#') && !path.isAbsolute(id),
      logLevel: 'silent',
    });
    await bundle.write({ dir: folder, format: 'esm', entryFileNames: '[name].mjs', chunkFileNames: '[name].mjs' });
    await bundle.close();
    workerFile = pathToFileURL(path.join(folder, 'pictureWorker.mjs'));
  });

  const noise = (width: number, height: number) =>
    sharp({
      create: { width, height, channels: 3, background: '#808080', noise: { type: 'gaussian', mean: 128, sigma: 40 } },
    });

  test('answers as the program does in one thread', async () => {
    const photo = new Uint8Array(await noise(300, 200).jpeg().toBuffer());
    const files = memoryFolder({ 'a.jpg': photo, 'bad.jpg': photo.subarray(0, 900), 'empty.jpg': '' });
    const here = await openPictures(files, memoryCache(), { workerFile: null });
    const there = await openPictures(files, memoryCache(), { workerFile, workers: 2 });
    const want = { width: 100, format: 'webp' } as const;
    for (const path of ['a.jpg', 'bad.jpg', 'empty.jpg']) {
      expect(await there.inspect(path)).toEqual(await here.inspect(path));
      expect(await there.clean({ ...want, shot: path }, 'a')).toEqual(await here.clean({ ...want, shot: path }, 'a'));
    }
    await there.close();
  });

  test('survives being given up in the middle of decoding, many times over', async () => {
    const photo = new Uint8Array(await noise(3000, 2000).jpeg().toBuffer());
    const files = memoryFolder({ 'a.jpg': photo });
    const impatient = await openPictures(files, memoryCache(), { workerFile, workers: 2, limitMs: 60 });
    const copies = await Promise.all(
      [1500, 1501, 1502, 1503].map((width) => impatient.clean({ shot: 'a.jpg', width, format: 'webp' }, 'a')),
    );
    expect(copies.filter(({ ok }) => !ok).length).toBeGreaterThan(0);
    await impatient.close();
    const patient = await openPictures(files, memoryCache(), { workerFile });
    expect(await patient.clean({ shot: 'a.jpg', width: 150, format: 'jpeg' }, 'a')).toMatchObject({ ok: true });
    await patient.close();
  });
});
