import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { adopt } from '#app/adopt.ts';
import { check } from '#app/check.ts';
import { publish } from '#app/publish.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { openWorld } from '#outside/openWorld.ts';

const world = openWorld({ now: () => '2026-11-25T12:00:00Z' });
let scratch: string;
beforeAll(async () => {
  scratch = await mkdtemp(path.join(tmpdir(), 'twicebuilt-folders-'));
});
afterAll(() => rm(scratch, { recursive: true, force: true }));

async function judged(files: Record<string, string>) {
  return check(memoryFolder(files), world);
}

async function rolesOf(files: Record<string, string>): Promise<Record<string, readonly string[]>> {
  const { roles } = await adopt(memoryFolder(files), world);
  return Object.fromEntries(roles.map(({ role, places }) => [role, places]));
}

const guide = '# Night light\n\n## Fit the lamp\n- Parts: D1, R1\n- Tools: soldering iron\n\nSolder both.\n';
const parts = 'Reference,Quantity,Description\nD1,1,White LED\nR1,1,Resistor 150 Ω\n';

describe('roles', () => {
  it('take all numbered pages of a guide that lies in several files', async () => {
    const roles = await rolesOf({
      'guide/1-intro.md': '# Night light\n\nIt glows.\n',
      'guide/2-build.md': guide.replace('# Night light\n\n', ''),
      'guide/10-after.md': '## Care\n\nKeep it dry.\n',
      'parts.csv': parts,
    });
    expect(roles.guide).toEqual(['guide/1-intro.md', 'guide/2-build.md', 'guide/10-after.md']);
  });

  it('prefer a guide that declares facts to a longer text that does not', async () => {
    const steps = Array.from(
      { length: 8 },
      (_, at) => `## Step ${at + 1}: Solder row ${at + 1}\n\nSolder it. Check it.\n`,
    );
    const roles = await rolesOf({
      'guide.md': guide,
      'build.md': `# Notes\n\n${steps.join('\n')}`,
      'parts.csv': parts,
    });
    expect(roles.guide).toEqual(['guide.md']);
  });

  it('say so when a file does not hold what its role promises', async () => {
    const { findings } = await judged({
      'guide.md': guide,
      'parts.csv': parts,
      'cables.csv': 'where,goes,mm\nlamp,board,50\n',
      'twicebuilt.yaml': 'format: 1\nroles:\n  wiring:\n    - cables.csv\n',
    });
    const [unread] = findings.filter((finding) => finding.check === 'not-readable');
    expect(unread?.sides.map(({ place }) => place.file)).toEqual(['cables.csv']);
    expect(unread?.message).toContain('wiring');
  });

  it('find the wiring in a table of the guide, and hold the code against it', async () => {
    const files = {
      'guide.md': `${guide}\n## Wiring\n\n| From | To | Net |\n|---|---|---|\n| U1.GPIO17 | D1.A | LAMP |\n| U1.GND | D1.K | GND |\n`,
      'parts.csv': `${parts}U1,1,ESP32 development board\n`,
      'firmware/main.cpp':
        '#include <Arduino.h>\nconst int LAMP_PIN = 16;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
    };
    expect((await rolesOf(files)).wiring).toEqual(['guide.md#wiring']);
    const { findings } = await judged(files);
    const [differs] = findings.filter((finding) => finding.check === 'pin-differs');
    expect(differs?.sides.map(({ place }) => place.file)).toEqual(['firmware/main.cpp', 'guide.md']);
  });
});

describe('parts lists', () => {
  it('number their rows under any header, and call references what they like', async () => {
    const { judged: first } = await judged({
      'guide.md': guide,
      'list.csv': 'Item,Qty,Part\n1,1,Pico board\n2,3,Button\n',
    });
    expect(first.build.parts.map(({ description }) => description)).toEqual(['Pico board', 'Button']);
    const { findings } = await judged({
      'guide.md': guide,
      'stueckliste.csv': 'Bezeichnung;Anzahl;Beschreibung\nD1;1;Weiße LED\nR1;1;Widerstand 150 Ω\n',
    });
    expect(findings.filter(({ weight }) => weight === 'halts')).toEqual([]);
  });
});

describe('facts', () => {
  it('that say none ask for nothing: not for a tool, a wire, code or a reading that is called none', async () => {
    const none = '- Code: none\n- Connects: none\n- Measure: –\n- Power: off\n';
    const { findings } = await judged({
      'guide.md': guide.replace('- Tools: soldering iron\n', `- Tools: none\n${none}`),
      'parts.csv': parts,
    });
    const about = findings.filter(({ sides }) =>
      sides.some(({ place }) => place.kind === 'text' && /none|–/.test(place.quote)),
    );
    expect(about.map(({ check: name, message }) => `${name}: ${message}`)).toEqual([]);
    expect(findings.filter(({ weight }) => weight === 'halts')).toEqual([]);
  });
});

describe('what is published', () => {
  it('holds no credential, wherever in the folder it stands', async () => {
    const root = await heap('leaky', {
      'guide.md': `${guide}\nJoin with \`WiFi.begin("home", "kelp-and-lantern-41")\` first.\n\n\`\`\`\nMQTT_PW = "rope-and-bell-52"\n\`\`\`\n\nThe word is barnacle-stair-63, keep it.\n`,
      'parts.csv': parts,
      'firmware/main.cpp':
        '#include <Arduino.h>\n// WiFi.begin("home", "old-mooring-74");\nconst char* password = "barnacle-stair-63";\nvoid setup() {}\nvoid loop() {}\n',
    });
    const { outputs, withheld } = await publish(
      await world.openFolder(root),
      await world.openOutput(path.join(scratch, 'leaky-out')),
      world,
    );
    const texts = await textsBelow(outputs[0]?.path ?? '');
    for (const word of ['kelp-and-lantern-41', 'rope-and-bell-52', 'old-mooring-74', 'barnacle-stair-63']) {
      expect(texts).not.toContain(word);
    }
    expect(texts).toContain('WITHHELD');
    expect(withheld.map(({ file }) => file)).toEqual(expect.arrayContaining(['guide.md', 'firmware/main.cpp']));
  });

  it('can be published again after an interruption, but not over a page that was changed by hand', async () => {
    const root = await heap('again', { 'guide.md': guide, 'parts.csv': parts });
    const out = path.join(scratch, 'again-out');
    const again = async () => publish(await world.openFolder(root), await world.openOutput(out), world);
    await again();
    const page = path.join(out, 'site/index.html');
    const finished = await readFile(page, 'utf8');

    // Interrupted: the plan is noted, one page is still the older one and another is not there yet.
    await writeFile(path.join(root, 'guide.md'), guide.replace('Solder both.', 'Solder both leads.'));
    const inventory = path.join(out, 'twicebuilt-outputs.json');
    const noted = await readFile(inventory, 'utf8');
    await again();
    const newer = await readFile(inventory, 'utf8');
    const hashes = (text: string) => JSON.parse(text).files['site/index.html'] as string[];
    const both = JSON.parse(newer);
    both.files['site/index.html'] = [...hashes(noted), ...hashes(newer)];
    await writeFile(inventory, JSON.stringify(both));
    await writeFile(page, finished);
    await rm(path.join(out, 'site/style.css'));
    await again();
    expect(await readFile(page, 'utf8')).toContain('Solder both leads.');
    expect(await readdir(path.join(out, 'site'))).toContain('style.css');

    await writeFile(page, 'my own page');
    await expect(again()).rejects.toThrow(/was changed after it was published/);
    expect(await readFile(page, 'utf8')).toBe('my own page');
  });
});

describe('a history.jsonl of the maker’s own', () => {
  it('is left alone when the folder is adopted', async () => {
    const root = await heap('own-history', { 'guide.md': guide, 'parts.csv': parts, 'history.jsonl': '{"mine":1}\n' });
    const { written } = await adopt(await world.openFolder(root), world);
    expect(written).toEqual(['twicebuilt.yaml']);
    expect(await readFile(path.join(root, 'history.jsonl'), 'utf8')).toBe('{"mine":1}\n');
  });
});

async function heap(name: string, files: Record<string, string>): Promise<string> {
  const root = path.join(scratch, name);
  for (const [file, text] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(root, file)), { recursive: true });
    await writeFile(path.join(root, file), text);
  }
  return root;
}

async function textsBelow(folder: string): Promise<string> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const texts = entries
    .filter((entry) => entry.isFile())
    .map((entry) => readFile(path.join(entry.parentPath, entry.name), 'latin1'));
  return (await Promise.all(texts)).join('\n');
}
