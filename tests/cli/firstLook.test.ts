import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from './runProgram.ts';

let root: string;
beforeAll(async () => {
  root = await mkdtemp(path.join(tmpdir(), 'twicebuilt-first-'));
});
afterAll(async () => {
  await rm(root, { recursive: true, force: true });
});

async function folderOf(name: string, files: Record<string, string>): Promise<string> {
  const folder = path.join(root, name);
  for (const [file, text] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(folder, file)), { recursive: true });
    await writeFile(path.join(folder, file), text);
  }
  return folder;
}

const parts = 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n';

describe('Somebody who looks at a folder of their own for the first time', () => {
  it('is told what to do with a text that has no role, and what comes next', async () => {
    const folder = await folderOf('heap', { 'parts.csv': parts, 'scribbles.txt': 'Solder D1 first.\n' });
    const { stdout } = await runProgram(['adopt', folder]);
    expect(stdout).toMatch(/scribbles\.txt.*\nIf one of them is your guide, .* name it under roles/);
    expect(stdout).toContain('Next: twicebuilt check DIR');
  });

  it('is told to write a guide where there is none, and to give steps headings where it has none', async () => {
    const without = await folderOf('without', { 'parts.csv': parts });
    expect((await runProgram(['check', without])).stdout).toMatch(/there is no guide in this folder\. Write one/);
    const plain = await folderOf('plain', {
      'parts.csv': parts,
      'guide.md': 'Solder D1 first.\n',
    });
    expect((await runProgram(['check', plain])).stdout).toMatch(/guide\.md has no steps\. Give each a heading/);
  });

  it('finds a file in the role that bears its name, however little stands in it', async () => {
    const folder = await folderOf('named', { 'log.md': 'Lamp lit today.\n', 'tools.csv': 'x,y\n1,2\n' });
    const { stdout } = await runProgram(['adopt', folder]);
    expect(stdout).toMatch(/log {2,}log\.md\n/);
    expect(stdout).toMatch(/tools {2,}tools\.csv\n/);
    expect(stdout).not.toContain('Without a role');
  });

  it('reads of a stop once on a walk, where it is met first', async () => {
    const folder = await folderOf('stop', {
      'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nR2,1,Resistor 150 Ω\nR3,1,Resistor 150 Ω\n',
      'wiring.csv': 'from,to\nR1.1,R2.1\nR2.2,R3.1\n',
      'guide.md':
        '# Night light\n\n## Join\n\n- Parts: R1\n- Connects: R1.1 – R2.1\n\nJoin them.\n\n## Fit\n\n- Parts: R2, R3\n- Connects: R2.2 – R3.1\n\nFit them.\n',
    });
    const { status, stdout } = await runProgram(['rehearse', folder]);
    expect(status).toBe(1);
    expect(stdout.match(/\(used-before-made\)/g)).toHaveLength(1);
  });

  it('sees apart what halts a builder and what halts publishing, and where to read of it', async () => {
    const folder = await folderOf('secret', {
      'parts.csv': parts,
      'guide.md': '# Night light\n\n## Fit the lamp\n\nPush D1 in.\n',
      'code/main.ino': '#define WIFI_PASSWORD "eelgrass-at-ebb-71"\nvoid setup() {}\nvoid loop() {}\n',
    });
    const { stdout } = await runProgram(['check', folder]);
    expect(stdout).toMatch(/Halts 0, slows \d+, tidy \d+;\s+halts publishing 1\./);
    const forPublisher = (await runProgram(['check', folder, '--for', 'publisher'])).stdout;
    expect(forPublisher).toContain('It should not be published like this.');
    expect(stdout).toMatch(/halts publishing \(secret-in-files\)|twicebuilt check DIR --for publisher/);
  });

  it('reads of changes that mend, and no place twice in one finding', async () => {
    const folder = await folderOf('smoke', {
      'parts.csv': parts,
      'guide.md':
        '# Night light\n\n## Fit the lamp\n\nSolder D1 to the board. Solder all six leads. Cut them to 5 mm.\n\n## Fit the switch\n\nSolder the wires to the board.\n',
    });
    const { stdout } = await runProgram(['check', folder]);
    expect(stdout).toMatch(/To look through \d+ changes that would mend some: twicebuilt check DIR --mend/);
    for (const finding of stdout.split(/^\d+\. /m).slice(1)) {
      const places = finding.split('\n').filter((line) => /^ {3}\S.*, line \d+$/.test(line));
      expect(new Set(places).size).toBe(places.length);
    }
  });

  it('is told that nothing is left where an item is ticked off an empty list', async () => {
    const folder = await folderOf('quiet', { 'parts.csv': parts, 'guide.md': '# Light\n\n## Fit it\n\nPush D1 in.\n' });
    await runProgram(['adopt', folder]);
    const { status, stderr } = await runProgram(['impact', folder, '--looked-at', '3']);
    expect(status).toBe(2);
    expect(stderr).toContain('Nothing is left to look at');
  });
});
