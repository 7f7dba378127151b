import { describe, expect, it } from 'vitest';
import { acceptFindings, takeBackAcceptances } from '#app/accept.ts';
import { check } from '#app/check.ts';
import { mendable, mendFindings } from '#app/mend.ts';
import type { FolderPort, World } from '#app/ports.ts';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { openWorld } from '#outside/openWorld.ts';

const cache = memoryCache();
const world: World = { ...openWorld(), openCache: async () => cache, now: () => '2026-05-01T18:00:00Z' };

const settings = `# my words
format: 1
title: Bell # keep
roles:
  parts: [parts.csv]
`;
const files = {
  'twicebuilt.yaml': settings,
  'guide.md':
    '# Bell\n\n## Fit R1\n\n- Parts: R1 330 Ω\n\nSolder R1, a resistor of 330 Ω.\n\n## Fit R2\n\n- Parts: R2\n\nSolder R2, a resistor of 22 kΩ.\n',
  'parts.csv': 'Reference,Quantity,Description,Value\nR1,1,Resistor,470 Ω\nR2,1,Resistor,10 kΩ\n',
};
const textOf = async (folder: FolderPort, path: string) => new TextDecoder().decode(await folder.read(path));
const open = async (folder: FolderPort) =>
  (await check(folder, world)).findings.filter((finding) => finding.check === 'value-differs').map(({ id }) => id);

describe('accepting findings', () => {
  it('keeps the maker’s file as it is but for the entry, and the finding stays quiet until a side changes', async () => {
    const folder = memoryFolder(files);
    const [r1, r2] = await open(folder);
    expect([r1, r2]).toEqual([expect.stringContaining('part:R1'), expect.stringContaining('part:R2')]);
    const { accepted, judgement } = await acceptFindings(folder, world, [String(r1)], { reason: 'meant' });
    expect(accepted.map(({ reason }) => reason)).toEqual(['It is meant so.']);
    expect(judgement.accepted).toHaveLength(1);
    const written = await textOf(folder, 'twicebuilt.yaml');
    expect(written.startsWith(settings)).toBe(true);
    expect(written).toContain(`finding: ${r1}`);
    expect(await open(folder)).toEqual([r2]);
    await folder.write('parts.csv', new TextEncoder().encode(files['parts.csv'].replace('470 Ω', '560 Ω')));
    expect(await open(folder)).toEqual([r1, r2]);
  });
  it('takes a finding by its number in the list, and renews an acceptance in place', async () => {
    const folder = memoryFolder(files);
    const before = await check(folder, world);
    const number = before.findings.findIndex((finding) => finding.check === 'value-differs') + 1;
    for (let times = 0; times < 2; times++) {
      const { accepted } = await acceptFindings(folder, world, [String(number)], { reason: 'a reason of mine' });
      expect(accepted[0]?.finding.id).toBe(before.findings[number - 1]?.id);
      await folder.write('parts.csv', new TextEncoder().encode(files['parts.csv'].replace('470', '560')));
    }
    expect((await textOf(folder, 'twicebuilt.yaml')).match(/finding:/g)).toHaveLength(1);
  });
  it('can be taken back, leaving the file as it was but for an empty list', async () => {
    const folder = memoryFolder(files);
    const [r1 = '', r2 = ''] = await open(folder);
    await acceptFindings(folder, world, [r1, r2], { reason: 'known' });
    await takeBackAcceptances(folder, world, [r1]);
    expect(await open(folder)).toEqual([r1]);
    await takeBackAcceptances(folder, world, [r2]);
    expect(await textOf(folder, 'twicebuilt.yaml')).toBe(`${settings}accepted:\n`);
  });
  it('says what it expected when the finding is not there, and in a folder that was not adopted', async () => {
    const folder = memoryFolder(files);
    await expect(acceptFindings(folder, world, ['77'], { reason: 'known' })).rejects.toThrow(/by its number/);
    await expect(acceptFindings(folder, world, ['value-differs'], { reason: 'known' })).rejects.toThrow(/by its name/);
    await expect(takeBackAcceptances(folder, world, ['value-differs:part:R1'])).rejects.toThrow(/was accepted/);
    const { 'twicebuilt.yaml': _, ...bare } = files;
    await expect(acceptFindings(memoryFolder(bare), world, ['1'], { reason: 'known' })).rejects.toThrow(/none yet/);
  });
});

describe('mending findings', () => {
  const outvoted = {
    ...files,
    'wiring.csv': 'from,to,note\nR1.1,R2.1,R1 is 470 Ω\n',
    'guide.md':
      '# Bell\n\n## Fit R1\n\n- Parts: R1, R2\n\nSolder R1.\n\n![The picture of R1](photos/A.PNG)\n![And of R2](photos/A.PNG)\n',
    'photos/a.png': 'x',
  };
  it('makes each change that was chosen, and only those', async () => {
    const folder = memoryFolder(outvoted);
    const mends = mendable(await check(folder, world));
    expect(mends.map(({ finding }) => finding.check)).toEqual(['picture-missing', 'picture-missing']);
    const { mended, refused } = await mendFindings(folder, mends.slice(1));
    expect([mended.length, refused.length]).toEqual([1, 0]);
    expect(await textOf(folder, 'guide.md')).toBe(
      outvoted['guide.md'].replace('![And of R2](photos/A.PNG)', '![And of R2](photos/a.png)'),
    );
    await mendFindings(folder, mendable(await check(folder, world)));
    expect(await textOf(folder, 'guide.md')).toBe(outvoted['guide.md'].replaceAll('A.PNG', 'a.png'));
  });
  it('makes several changes of one file in one write', async () => {
    const folder = memoryFolder(outvoted);
    const { mended } = await mendFindings(folder, mendable(await check(folder, world)));
    expect(mended).toHaveLength(2);
    expect(await textOf(folder, 'guide.md')).toBe(outvoted['guide.md'].replaceAll('A.PNG', 'a.png'));
  });
  it('refuses where the file has changed since, and leaves it', async () => {
    const folder = memoryFolder(outvoted);
    const mends = mendable(await check(folder, world));
    const edited = outvoted['guide.md'].replaceAll('A.PNG', 'b.png');
    await folder.write('guide.md', new TextEncoder().encode(edited));
    const { mended, refused } = await mendFindings(folder, mends);
    expect([mended.length, refused.length]).toEqual([0, 2]);
    expect(await textOf(folder, 'guide.md')).toBe(edited);
  });
});
