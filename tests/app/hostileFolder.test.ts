import { createHash } from 'node:crypto';
import { lstat, mkdir, mkdtemp, readdir, readFile, readlink, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { adopt } from '#app/adopt.ts';
import { check } from '#app/check.ts';
import { publish } from '#app/publish.ts';
import { openWorld } from '#outside/openWorld.ts';

const longName = `${'ä'.repeat(120)}.md`;
let scratch: string;
let heap: string;

beforeAll(async () => {
  scratch = await mkdtemp(path.join(tmpdir(), 'twicebuilt-hostile-'));
  heap = path.join(scratch, 'the maker’s "heap" 電子');
  await mkdir(path.join(heap, 'photos & more'), { recursive: true });
  const photo = await sharp({ create: { width: 320, height: 240, channels: 3, background: '#486' } })
    .jpeg()
    .toBuffer();
  const files: Record<string, string | Buffer> = {
    'guide.md': [
      '# Lamp',
      '## Fit R1',
      '- Parts: R1',
      '',
      'Solder it.',
      '',
      '![good](<photos & more/good.jpg>) ![cut off](<photos & more/cut.jpg>) ![empty](<photos & more/empty.jpg>)',
      '![text](<photos & more/text.jpg>) ![png](<photos & more/really a png.jpg>) ![evil](javascript:alert(1))',
    ].join('\n'),
    'list.csv': 'Reference,Quantity,Description\nR1,1,Resistor\n"R2,1,never closed\n',
    'empty.csv': '',
    'empty.md': '',
    'zeros.csv': Buffer.alloc(4096),
    'not really text.md': photo,
    'half a letter.csv': Buffer.from([0x52, 0xff, 0xfe, 0x2c, 0x31, 0xc3]),
    'odd utf16.csv': Buffer.from([0xff, 0xfe, 0x52, 0x00, 0x31]),
    'huge.csv': Buffer.alloc(5_000_000, 'a,b\n'),
    'firmware/main.cpp': 'void setup( { pinMode( ; const int = = 5;\n#define X \\\n',
    'firmware/deep.py': `${'('.repeat(3000)}\n`,
    'platformio.ini': '[env:x\nlib_deps = \n  @@@\n',
    [longName]: '# A long name\n',
    'line\nbreak.md': '# A name with a line break\n',
    'photos & more/good.jpg': photo,
    'photos & more/cut.jpg': photo.subarray(0, 200),
    'photos & more/empty.jpg': Buffer.alloc(0),
    'photos & more/text.jpg': 'not a picture at all',
    'photos & more/really a png.jpg': await sharp(photo).png().toBuffer(),
  };
  for (const [name, content] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(heap, name)), { recursive: true });
    await writeFile(path.join(heap, name), content);
  }
  await symlink('.', path.join(heap, 'loop'));
  await symlink('nowhere', path.join(heap, 'broken.md'));
});
afterAll(() => rm(scratch, { recursive: true, force: true }));

describe('a folder full of traps', () => {
  it('is adopted, checked and published, says what could not be read, and stays as it was', async () => {
    const before = await digestsOf(heap);
    const world = openWorld({ now: () => '2026-11-25T12:00:00Z' });
    const folder = await world.openFolder(heap);

    const { findings } = await check(folder, world);
    const unreadable = findings
      .filter((finding) => finding.check === 'not-readable')
      .flatMap(({ sides }) => sides.map(({ place }) => place.file));
    expect(unreadable).toEqual(
      expect.arrayContaining([
        'huge.csv',
        'not really text.md',
        'zeros.csv',
        'photos & more/cut.jpg',
        'photos & more/empty.jpg',
        'photos & more/text.jpg',
      ]),
    );

    const output = await world.openOutput(path.join(scratch, 'published'));
    const publication = await publish(folder, output, world);
    expect(publication.cleaned.map((entry) => entry.path).sort()).toEqual([
      'photos & more/good.jpg',
      'photos & more/really a png.jpg',
    ]);
    expect(await digestsOf(heap)).toEqual(before);

    await adopt(folder, world);
    const after = await digestsOf(heap);
    expect(
      Object.keys(after)
        .filter((name) => before[name] === undefined)
        .sort(),
    ).toEqual(['history.jsonl', 'twicebuilt.yaml']);
    for (const [name, digest] of Object.entries(before)) expect(after[name], name).toBe(digest);
  });
});

async function digestsOf(root: string): Promise<Record<string, string>> {
  const digests: Record<string, string> = {};
  for (const entry of await readdir(root, { recursive: true, withFileTypes: true })) {
    const full = path.join(entry.parentPath, entry.name);
    const stat = await lstat(full);
    if (stat.isSymbolicLink()) digests[path.relative(root, full)] = `→ ${await readlink(full)}`;
    if (stat.isFile())
      digests[path.relative(root, full)] = `${stat.mode} ${createHash('sha256')
        .update(await readFile(full))
        .digest('hex')}`;
  }
  return digests;
}
