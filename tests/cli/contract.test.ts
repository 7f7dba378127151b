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
  [
    'confirm',
    () => ['confirm', demo.root],
    ['format', 'verdict', 'coverage', 'proposals', 'confirm', 'confirmed', 'refused', 'declined', 'written', 'edits'],
    [],
  ],
  ['check', () => ['check', demo.root], ['format', 'verdict', 'findings', 'accepted', 'lowered', 'ran', 'note'], []],
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
  [
    'look',
    () => ['look', ...['IMG_2043.jpg', 'IMG_2046.jpg'].map((name) => path.join(demo.root, 'photos', name))],
    ['format', 'shots', 'leftOut'],
    [
      ...['path', 'hash', 'kind', 'width', 'height', 'takenAt', 'camera', 'position'],
      ...['focus', 'exposure', 'cast', 'clutter', 'subject', 'board'],
    ],
  ],
  [
    'compare',
    () => [
      'compare',
      ...['20261003_194322.jpg', '20261003_200451.jpg'].map((name) => path.join(demo.root, 'photos', name)),
    ],
    ['format', 'aligned', 'confidence', 'homography', 'changes'],
    ['box', 'area', 'inSecond'],
  ],
  [
    'flatten',
    () => [
      ...['flatten', path.join(demo.root, 'photos/IMG_2049.jpg'), '--size', '70x50', '--per-mm', '4'],
      ...['--corners', '0.09,0.18 0.84,0.09 0.98,0.73 0.07,0.85', '--to', path.join(scratch, 'flat.png')],
    ],
    ['format', 'file', 'to', 'width', 'height', 'boardHeight', 'pixelsPerMillimetre', 'corners', 'size'],
    [],
  ],
];
const itemsUnder: Record<string, string> = {
  parts: 'parts',
  cautions: 'hazards',
  pins: 'pins',
  rehearse: 'steps',
  publish: 'outputs',
  look: 'shots',
  compare: 'changes',
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

describe('confirm', () => {
  const heapOf = {
    'guide.md':
      '# Fan\r\n\r\n## Mount the motor\r\n\r\nPush the motor into the housing. Fasten it with four M3 screws.\r\n\r\n## Solder the motor leads\r\n\r\nSolder both leads to the switch. Trim the leads. Solder R1 as well.\r\n',
    'parts.csv':
      'Reference,Quantity,Description\n,1,"Geared motor, 6 V"\n,1,"Housing, printed"\n,4,M3 × 10 screws\n,1,Rocker switch\nR1,1,Resistor\n',
  };
  const adopted = { ...heapOf, 'twicebuilt.yaml': 'format: 1\ntitle: Fan\n' };
  it('writes nothing unless told, and nothing at all into a folder that was not adopted', async () => {
    const folder = await heap('confirm-heap', heapOf);
    expect(runProgram(['confirm', folder]).stdout).toContain('Geared motor');
    expect(runProgram(['confirm', folder, '--all', '--show']).stdout).toContain('+ - Parts: ');
    const { status, stderr } = runProgram(['confirm', folder, '--all']);
    expect([status, stderr.includes('adopt')]).toEqual([2, true]);
    expect((await readdir(folder)).sort()).toEqual(['guide.md', 'parts.csv']);
    for (const [name, text] of Object.entries(heapOf)) {
      expect(await readFile(path.join(folder, name), 'utf8')).toBe(text);
    }
  });
  it('adds lines that are read back as the parts they name, and leaves every other byte', async () => {
    const folder = await heap('confirm-all', adopted);
    const { confirmed, refused, written } = JSON.parse(runProgram(['confirm', folder, '--all', '--json']).stdout);
    expect(refused).toEqual([]);
    expect(written).toEqual(['guide.md']);
    expect(confirmed.length).toBeGreaterThan(4);
    const text = await readFile(path.join(folder, 'guide.md'), 'utf8');
    expect(text).toMatch(/- Parts: .*M3 × 10 screws × 4|- Parts: .*4 × M3 × 10 screws/);
    expect(text.split('\r\n').filter((line) => !/^[-*] \w+: /.test(line) && line !== '')).toEqual(
      heapOf['guide.md'].split('\r\n').filter((line) => line !== ''),
    );
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
    const { coverage, steps } = JSON.parse(runProgram(['rehearse', folder, '--json']).stdout);
    expect(coverage.parts).toBe(1);
    expect(steps.at(-1).after.bag).toEqual(expect.objectContaining({ R1: 0 }));
  });
  it('takes some by number, and never proposes again what was declined', async () => {
    const folder = await heap('confirm-some', adopted);
    const list = () => JSON.parse(runProgram(['confirm', folder, '--json']).stdout).proposals;
    const [first, second] = list();
    const { confirmed, declined } = JSON.parse(
      runProgram(['confirm', folder, '--only', String(first.number), '--not', String(second.number), '--json']).stdout,
    );
    expect([confirmed[0].id, declined]).toEqual([first.id, [second.id]]);
    expect(await readFile(path.join(folder, 'twicebuilt.yaml'), 'utf8')).toContain(second.id);
    expect(list().map(({ id }: { id: string }) => id)).not.toContain(second.id);
    expect(runProgram(['confirm', folder, '--only', '999']).status).toBe(2);
    expect(runProgram(['confirm', folder, '--at-least', 'much']).status).toBe(2);
  });
  it('names at most five confirmations where too little is told', async () => {
    const folder = await heap('confirm-five', adopted);
    const { verdict, confirm } = JSON.parse(runProgram(['check', folder, '--json']).stdout);
    expect(verdict).toBe('not-enough-told');
    expect(confirm.length).toBeGreaterThan(0);
    expect(confirm.length).toBeLessThanOrEqual(5);
  });
});

describe('check --mend and accept', () => {
  const build = {
    'twicebuilt.yaml': 'format: 1\ntitle: Lamp\n',
    'guide.md': '# Lamp\n\n## Fit R1\n- Parts: R1\n\nPush it in.\n\n![R1 on the board](A.PNG)\n',
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
