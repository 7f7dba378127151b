import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyDemo, type DemoCopy } from '../demo/demoCopy.ts';
import { runProgram } from './runProgram.ts';

let demo: DemoCopy;
let scratch: string;
beforeAll(async () => {
  demo = await copyDemo();
  scratch = await mkdtemp(path.join(tmpdir(), 'twicebuilt-cli-'));
});
afterAll(async () => {
  await demo.discard();
  await rm(scratch, { recursive: true, force: true });
});

/** Keys that the documents promise. */
const contract: readonly [string, () => string[], readonly string[], readonly string[]][] = [
  ['adopt', () => ['adopt', demo.root], ['format', 'roles', 'unplaced', 'missing', 'leaks'], []],
  [
    'parts',
    () => ['parts', demo.root],
    ['format', 'columns', 'parts', 'problems'],
    [
      'id',
      'refs',
      'quantity',
      'unit',
      'description',
      'value',
      'ratings',
      'package',
      'mpn',
      'supplier',
      'links',
      'price',
      'substitution',
      'fitted',
      'row',
      'other',
    ],
  ],
  [
    'pins',
    () => ['pins', demo.root],
    ['format', 'pins', 'libraries', 'constants', 'secrets'],
    ['file', 'line', 'name', 'pin', 'use'],
  ],
  [
    'cautions',
    () => ['cautions', demo.root],
    ['format', 'hazards', 'note'],
    ['hazard', 'name', 'grave', 'word', 'step', 'places', 'why', 'cover', 'cautions', 'wording', 'wear', 'deferral'],
  ],
  ['check', () => ['check', demo.root], ['format', 'verdict', 'findings', 'accepted', 'lowered', 'ran'], []],
  [
    'rehearse',
    () => ['rehearse', demo.root],
    ['format', 'verdict', 'coverage', 'steps', 'findings'],
    ['id', 'title', 'place', 'before', 'after', 'findings'],
  ],
  [
    'publish',
    () => ['publish', demo.root, '--to', path.join(scratch, 'guide')],
    ['format', 'verdict', 'outputs', 'cleaned', 'withheld', 'findings'],
    ['kind', 'path', 'files', 'bytes'],
  ],
];
const itemsUnder: Record<string, string> = {
  parts: 'parts',
  cautions: 'hazards',
  pins: 'pins',
  rehearse: 'steps',
  publish: 'outputs',
};

describe('--json', () => {
  it.each(contract)('of %s is one document with the promised keys', (name, args, keys, itemKeys) => {
    const { status, stdout } = runProgram([...args(), '--json']);
    expect(status).toBe(0);
    const document = JSON.parse(stdout);
    expect(document.format).toBe(1);
    expect(Object.keys(document)).toEqual(expect.arrayContaining([...keys]));
    const under = itemsUnder[name];
    if (under !== undefined) {
      expect(document[under].length).toBeGreaterThan(0);
      for (const item of document[under]) expect(Object.keys(item)).toEqual(expect.arrayContaining([...itemKeys]));
    }
  });

  it('gives a finding its id, check, weight, audience, message, places and mend', async () => {
    const folder = await heap('finding', {
      'guide.md': '# Lamp\n\n## Fit R1\n- Parts: R1\n\nSolder it.\n',
      'parts.csv': 'Reference,Quantity,Description\nR2,1,Resistor\nR3,1,Resistor\n',
    });
    const { status, stdout } = runProgram(['check', folder, '--json']);
    const { findings } = JSON.parse(stdout);
    expect(status).toBe(1);
    expect(findings[0]).toMatchObject({ check: 'part-not-listed', weight: 'halts', audience: 'builder', mend: null });
    expect(findings[0].places[0]).toMatchObject({ file: 'guide.md', line: 4, text: 'R1' });
  });
});

describe('check --mend and accept', () => {
  const build = {
    'twicebuilt.yaml': 'format: 1\ntitle: Lamp\n',
    'guide.md': '# Lamp\n\n## Fit R1\n- Parts: R1\n\nSolder it.\n\n![R1 on the board](A.PNG)\n',
    'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor\n',
    'a.png': 'x',
  };
  it('shows the change and makes it only when told to', async () => {
    const folder = await heap('mend', build);
    const { stdout } = runProgram(['check', folder, '--mend']);
    expect(stdout).toContain('- ![R1 on the board](A.PNG)');
    expect(stdout).toContain('+ ![R1 on the board](a.png)');
    expect(await readFile(path.join(folder, 'guide.md'), 'utf8')).toBe(build['guide.md']);
    const { mended } = JSON.parse(runProgram(['check', folder, '--mend', '--yes', '--json']).stdout);
    expect(mended).toEqual(['picture-missing:file:A.PNG']);
    expect(await readFile(path.join(folder, 'guide.md'), 'utf8')).toBe(build['guide.md'].replace('A.PNG', 'a.png'));
  });
  it('accepts by number with a stock reason, and takes back by name', async () => {
    const folder = await heap('accept', build);
    const first = JSON.parse(runProgram(['check', folder, '--json']).stdout).findings[0].id;
    const { accepted } = JSON.parse(runProgram(['accept', folder, '1', '--because', 'meant', '--json']).stdout);
    expect(accepted.map(({ id, reason }: { id: string; reason: string }) => [id, reason])).toEqual([
      [first, 'It is meant so.'],
    ]);
    expect(JSON.parse(runProgram(['accept', folder, first, '--take-back', '--json']).stdout).takenBack).toEqual([
      first,
    ]);
    expect(runProgram(['accept', folder, '999']).status).toBe(2);
    expect(runProgram(['accept', folder]).status).toBe(2);
  });
});

describe('cautions', () => {
  it('never says that a build is safe', async () => {
    const folder = await heap('harmless', {
      'guide.md': '# Lamp\n\n## Fit D1\n- Parts: D1\n\nPush it in.\n',
      'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\n',
    });
    const { stdout } = runProgram(['cautions', folder, '--json']);
    expect(JSON.parse(stdout)).toMatchObject({ format: 1, hazards: [] });
    expect(JSON.parse(stdout).note).toMatch(/^No listed hazard was found in the data given\. That does not make/);
    expect(runProgram(['cautions', folder]).stdout).toContain('No listed hazard was found in the data given.');
  });
});

describe('exit status', () => {
  it('is 2, with nothing on stdout and a remedy on stderr, for a folder that is not there', () => {
    const { status, stdout, stderr } = runProgram(['check', path.join(scratch, 'nowhere'), '--json']);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain('nowhere');
  });

  it('is 2 for an unknown option and for an unknown command', () => {
    expect(runProgram(['check', demo.root, '--loud']).status).toBe(2);
    expect(runProgram(['juggle']).status).toBe(2);
  });
});

describe('a folder that was not adopted', () => {
  it('is left exactly as it was by check, rehearse, parts, pins, cautions and publish', async () => {
    const folder = await heap('untouched', {
      'guide.md': '# Lamp\n\n## Fit R1\n- Parts: R1\n\nSolder it.\n',
      'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor\n',
    });
    const before = await digestOfFolder(folder);
    for (const command of ['check', 'rehearse', 'parts', 'pins', 'cautions'])
      expect(runProgram([command, folder]).status).not.toBe(2);
    expect(runProgram(['publish', folder]).status).toBe(2);
    expect(runProgram(['publish', folder, '--to', path.join(folder, 'site')]).status).toBe(2);
    expect(runProgram(['publish', folder, '--to', path.join(scratch, 'untouched-site')]).status).toBe(0);
    expect(await digestOfFolder(folder)).toBe(before);
  });

  it('gets only twicebuilt.yaml and history.jsonl when it is adopted, and nothing the second time', async () => {
    const folder = await heap('adopted', {
      'notes/guide.md': '# Lamp\n\n## Fit R1\n- Parts: R1\n\nSolder it.\n',
      'list.csv': 'Reference,Quantity,Description\nR1,1,Resistor\n',
    });
    const before = (await readdir(folder)).sort();
    expect(runProgram(['adopt', folder]).status).toBe(0);
    expect((await readdir(folder)).sort()).toEqual([...before, 'history.jsonl', 'twicebuilt.yaml'].sort());
    const after = await digestOfFolder(folder);
    expect(JSON.parse(runProgram(['adopt', folder, '--json']).stdout).written).toEqual([]);
    expect(await digestOfFolder(folder)).toBe(after);
  });
});

describe('publish', () => {
  it('refuses a folder that holds what it did not write', async () => {
    const output = await heap('foreign', { 'site/diary.txt': 'mine' });
    const { status, stderr } = runProgram(['publish', demo.root, '--to', output]);
    expect(status).toBe(2);
    expect(stderr).toContain('diary.txt');
    expect(await readFile(path.join(output, 'site/diary.txt'), 'utf8')).toBe('mine');
  });

  it('withholds a credential from the published code and says where it was', async () => {
    const copy = await copyDemo();
    await copy.write(
      'firmware/secrets.h',
      '#pragma once\n#define WIFI_NAME "Quayside"\n#define WIFI_PASSWORD "kelp-and-lantern-41"\n',
    );
    const output = path.join(scratch, 'withheld');
    const { stdout } = runProgram(['publish', copy.root, '--to', output, '--json']);
    await copy.discard();
    expect(stdout).not.toContain('kelp-and-lantern');
    expect(JSON.parse(stdout).withheld).toContainEqual({ file: 'firmware/secrets.h', line: 3, kind: 'wifi-password' });
    const published = await readdir(output, { recursive: true, withFileTypes: true });
    for (const entry of published.filter((file) => file.isFile())) {
      expect(await readFile(path.join(entry.parentPath, entry.name), 'latin1')).not.toContain('kelp-and-lantern');
    }
  });
});

async function heap(name: string, files: Record<string, string>): Promise<string> {
  const folder = path.join(scratch, name);
  for (const [file, text] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(folder, file)), { recursive: true });
    await writeFile(path.join(folder, file), text);
  }
  return folder;
}

async function digestOfFolder(folder: string): Promise<string> {
  const hash = createHash('sha256');
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  for (const entry of entries.map((file) => path.join(file.parentPath, file.name)).sort()) {
    hash.update(entry);
    hash.update(await readFile(entry).catch(() => 'folder'));
  }
  return hash.digest('hex');
}
