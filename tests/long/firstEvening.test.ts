import { spawnSync } from 'node:child_process';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../cli/runProgram.ts';

const root = path.resolve(import.meta.dirname, '../..');
let scratch: string;
let lamp: string;
let printed = '';
beforeAll(async () => {
  scratch = await mkdtemp(path.join(tmpdir(), 'twicebuilt-evening-'));
  lamp = path.join(scratch, 'lamp');
  spawnSync(process.execPath, [path.join(root, 'demo/scenes/writeHeap.mjs'), lamp]);
});
afterAll(() => rm(scratch, { recursive: true, force: true }));

function run(command: string, ...words: string[]): void {
  printed += runProgram([command, lamp, ...words]).stdout.replaceAll(lamp, '.');
}

async function change(file: string, made: (text: string) => string): Promise<void> {
  const before = await readFile(path.join(lamp, file), 'utf8');
  const after = made(before);
  expect(after, `${file} as the page changes it`).not.toBe(before);
  await writeFile(path.join(lamp, file), after);
}

/** What the page asks the reader to do by hand. */
async function doTheEvening(): Promise<void> {
  run('adopt');
  await change('twicebuilt.yaml', (text) =>
    text
      .replace(/^ *- to send\/\n/m, '')
      .replace(/^# summary: .*/m, 'summary: A desk lamp.')
      .replace(/^# authors: .*/m, 'authors: [Marren Tolvik]')
      .replace(
        /^# licences:\n#( .*)\n#( .*)\n#( .*)/m,
        'licences: {hardware: CERN-OHL-P-2.0, code: MIT, text: CC-BY-4.0}',
      ),
  );
  const notes = await readFile(path.join(lamp, 'notes.txt'), 'utf8');
  const first = notes.indexOf('then: ');
  const steps = notes
    .slice(first)
    .replace(/^then: (.)/gm, (_, letter: string) => `## ${letter.toUpperCase()}`)
    .replace('buffer u2', 'buffer U2');
  await writeFile(path.join(lamp, 'guide.md'), `# Tide lamp\n\n${steps}`);
  const evenings = notes
    .slice(0, first)
    .replace(/^(\d+)\.(\d+)\. (.*)$/gm, (_, day: string, month: string, time: string) => {
      return `## 2026-${month.padStart(2, '0')}-${day.padStart(2, '0')} ${time}\n`;
    })
    .replace('X1 and X2 leaned', 'mistake: X1 and X2 leaned')
    .replace('I soldered the sockets', 'cause: I soldered the sockets')
    .replace(/^(Push the sockets on to U1 first.*)$/m, 'remedy: $1\nstep: Fit the sockets');
  await writeFile(path.join(lamp, 'log.md'), `# Bench log\n\n${evenings}`);
  await rm(path.join(lamp, 'notes.txt'));
  await cp(path.join(root, 'demo/tide-lamp/tools.csv'), path.join(lamp, 'tools.csv'));
  run('check');
  run('check', '--mend', '--yes');
  run('check', '--mend', '--yes');
  run('accept', 'file-name-vague:build:file-names', '--because', 'the folder keeps its name until the next version');
  run('confirm');
  run('confirm', '--at-least', '0.8');
  await change('guide.md', (text) => text.replace('U1, X3, LED1', 'U1, X3'));
  const wires = await wiresOfDemo();
  await change('guide.md', (text) =>
    text.replace(/^## (.*)\n((?:- .*\n)+)/gm, (whole, heading: string, facts: string) => {
      const made = wires.get(heading);
      return made === undefined ? whole : `## ${heading}\n${facts.replace(/^- Connects.*\n/m, '')}${made}\n`;
    }),
  );
  run('rehearse');
  await change('guide.md', (text) => text.replace('- Parts: HS1, W1, W2, C1\n', '- Parts: HS1, W1, W2, C1, J1\n'));
  run('check');
  const page = await readFile(path.join(root, 'docs/first-evening.md'), 'utf8');
  const [cover = '', bands = ''] = page.match(/!\[[^\]]*\]\(phone%20backup[^)]*\)/g) ?? [];
  await change('guide.md', (text) => text.replace('# Tide lamp\n', `# Tide lamp\n\n${cover}\n`));
  await change('guide.md', (text) => text.replace('wires to them later.\n', `wires to them later.\n\n${bands}\n`));
  run('check', '--for', 'publisher');
  run('publish');
  await change('cables.tsv', (text) => text.replace('U1.IO16\tU2.1A\tgreen', 'U1.IO16\tU2.1A\twhite'));
  run('impact');
}

async function wiresOfDemo(): Promise<Map<string, string>> {
  const guide = await readFile(path.join(root, 'demo/tide-lamp/guide.md'), 'utf8');
  return new Map(
    guide.split(/^### /m).flatMap((step): [string, string][] => {
      const made = /^- Connects:.*$/m.exec(step)?.[0];
      return made === undefined ? [] : [[step.split('\n')[0]?.trim() ?? '', made]];
    }),
  );
}

describe('docs/first-evening.md', () => {
  it('shows what the program prints, and what then stands in the files', async () => {
    await doTheEvening();
    for (const file of ['guide.md', 'log.md']) printed += await readFile(path.join(lamp, file), 'utf8');
    const today = new Date().toISOString().slice(0, 10);
    const corpus = evenly(printed.replaceAll(today, '2026-11-28'));
    const page = await readFile(path.join(root, 'docs/first-evening.md'), 'utf8');
    const excerpts = [...page.matchAll(/^ *```text\n([\s\S]*?)^ *```$/gm)].flatMap(([, text = '']) =>
      text.split(/^ *…$/m),
    );
    expect(excerpts.length).toBeGreaterThan(12);
    for (const excerpt of excerpts) {
      const wanted = /^ *!\[/m.test(excerpt) ? excerpt.trim().split('\n') : [excerpt];
      for (const one of wanted) expect(corpus).toContain(evenly(one));
    }
  });
});

/** Lines without their indent and without empty ones. */
function evenly(text: string): string {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join('\n');
}
