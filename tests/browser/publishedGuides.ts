import { cp, mkdir, mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { publish } from '#app/publish.ts';
import { openWorld } from '#outside/openWorld.ts';
import { writeBigBuild } from '../../bench/bigBuild.mjs';
import { demoFolder } from '../demo/demoCopy.ts';

const projects = path.resolve(import.meta.dirname, '../projects');

/** Guides that strain a page, each in its own way. */
export const guideNames = ['demo', 'sixty steps', 'no pictures', 'long names', 'right to left', 'in trouble'] as const;
export type GuideName = (typeof guideNames)[number];

/** Publishes a guide into a temporary folder and answers with the folder of its site. */
export async function publishGuide(name: GuideName): Promise<string> {
  const root = await mkdtemp(path.join(tmpdir(), 'twicebuilt-page-'));
  const build = path.join(root, 'build');
  await writeBuild(name, build);
  const world = openWorld();
  await publish(await world.openFolder(build), await world.openOutput(path.join(root, 'out')), world);
  return path.join(root, 'out/site');
}

async function writeBuild(name: GuideName, folder: string): Promise<void> {
  switch (name) {
    case 'demo':
      return copyBuild(demoFolder, folder);
    case 'sixty steps':
      return writeBigBuild(folder, { steps: 60, parts: 90, connections: 120 });
    case 'no pictures':
      await copyBuild(path.join(projects, 'dusk-blinker'), folder);
      return withoutPictures(folder);
    case 'long names':
      return writeFiles(folder, longNames);
    case 'right to left':
      return writeFiles(folder, rightToLeft);
    case 'in trouble':
      return writeFiles(folder, inTrouble);
  }
}

/** Takes the pictures out of a guide's text and settings, and lets their files lie. */
async function withoutPictures(folder: string): Promise<void> {
  for (const name of ['blinker.md', 'twicebuilt.yaml']) {
    const file = path.join(folder, name);
    const text = await readFile(file, 'utf8');
    await writeFile(file, text.replace(/!\[[^\]]*\]\([^)]*\)/g, '').replace(/^cover:.*$/m, ''));
  }
}

function copyBuild(from: string, to: string): Promise<void> {
  return cp(from, to, {
    recursive: true,
    filter: (source) => !/\/(out|\.twicebuilt)(\/|$)/.test(source.slice(from.length)),
  });
}

async function writeFiles(folder: string, files: Readonly<Record<string, string>>): Promise<void> {
  for (const [file, text] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(folder, file)), { recursive: true });
    await writeFile(path.join(folder, file), text);
  }
}

const longWord = 'Hochspannungsfreischaltgeraeteprueflampenhalterung';
const longNames: Readonly<Record<string, string>> = {
  'twicebuilt.yaml': `format: 1\ntitle: ${longWord} for ${longWord} with a subtitle that goes on for rather longer than anybody would like\nreports: errors@example.org\nroles:\n  guide: [guide.md]\n  parts: [parts.csv]\n  wiring: [wiring.csv]\n`,
  'guide.md': [
    `# ${longWord}`,
    '',
    `A lamp holder. See ${'https://example.org/'}${'very-long-address/'.repeat(12)}page`,
    '',
    `## Fit ${longWord}${longWord} to ${longWord} and then turn it round before the glue has set`,
    '',
    `- Parts: LAMPHOLDER1, ${longWord}`,
    '- Tools: soldering iron',
    '- Connects: LAMPHOLDER1.ANODE_OF_THE_SECOND_CHANNEL – CONTROLLERBOARD1.GENERAL_PURPOSE_INPUT_OUTPUT_17',
    '- Measure: LAMPHOLDER1.ANODE_OF_THE_SECOND_CHANNEL – CONTROLLERBOARD1.GENERAL_PURPOSE_INPUT_OUTPUT_17 > 1000 kΩ',
    '',
    `Take \`${'a_very_long_identifier_'.repeat(8)}\` and ${longWord.toLowerCase().repeat(3)}.`,
    '',
    `| ${longWord} | ${longWord} | ${longWord} | ${longWord} |`,
    '| --- | --- | --- | --- |',
    '| a | b | c | d |',
    '',
    '```cpp',
    `const char* text = "${'long line '.repeat(40)}";`,
    '```',
    '',
  ].join('\n'),
  'parts.csv': `Ref,Qty,Description,Value,MPN,Supplier,Price,Currency\nLAMPHOLDER1,1,${longWord} ${longWord},,${'X9-'.repeat(25)}1,${longWord} & ${longWord},12345.67,EUR\nCONTROLLERBOARD1,1,Controller board,,,,1.00,EUR\n`,
  'wiring.csv':
    'from,to,colour,length,note\nLAMPHOLDER1.ANODE_OF_THE_SECOND_CHANNEL,CONTROLLERBOARD1.GENERAL_PURPOSE_INPUT_OUTPUT_17,blue and white with a black tracer,30 cm,A note that also takes its time to come to its end\n',
};

const rightToLeft: Readonly<Record<string, string>> = {
  'twicebuilt.yaml':
    'format: 1\ntitle: מנורת לילה קטנה\nlanguage: he\nsummary: מנורה קטנה למדף, הנדלקת בלחיצה.\nroles:\n  guide: [guide.md]\n  parts: [parts.csv]\n  wiring: [wiring.csv]\n',
  'guide.md': [
    '# מנורת לילה קטנה',
    '',
    'מנורה קטנה למדף, הנדלקת בלחיצה.',
    '',
    '## הלחמת הנגד והנורה',
    '',
    '- Parts: R1, D1',
    '- Tools: soldering iron',
    '- Connects: R1.2 – D1.A',
    '- Caution: קצה המלחם חם ושורף את העור. החזיקו רק בידית.',
    '- Expect: הרגל הארוכה של הנורה פונה אל הנגד',
    '',
    'הלחימו את R1 ואת D1 אל הלוח. חתכו את הרגליים העודפות.',
    '',
    '## בדיקה',
    '',
    '- Tools: multimeter',
    '- Measure: R1.1 – D1.K > 1 kΩ',
    '',
    'מדדו לפני חיבור הסוללה.',
    '',
    '## כשזה לא עובד – troubleshooting',
    '',
    '| symptom | fix |',
    '| --- | --- |',
    '| הנורה כבויה | הפכו את D1 |',
    '| הנורה מהבהבת | הלחימו שוב |',
    '',
  ].join('\n'),
  'parts.csv': 'Ref,Qty,Description,Value\nR1,1,נגד,330R\nD1,1,נורת LED אדומה,\n',
  'wiring.csv': 'from,to,colour\nR1.2,D1.A,אדום\n',
};

const inTrouble: Readonly<Record<string, string>> = {
  'twicebuilt.yaml':
    'format: 1\ntitle: Door chime\nsite: https://example.org/chime\nreports: https://example.org/report\nrevision: B\nroles:\n  guide: [guide.md]\n  parts: [parts.csv]\n  log: [log.md]\n  errata: [errata.md]\n',
  'guide.md': [
    '# Door chime',
    '',
    'Two tones for a door.',
    '',
    '## Fit the resistors',
    '',
    '- Parts: R1, R2',
    '- Tools: soldering iron',
    '',
    'Solder R1 and R2 to the perfboard.',
    '',
    '### Why two resistors?',
    '',
    'They share the heat.',
    '',
    '## Fit the speaker',
    '',
    '- Parts: LS1',
    '',
    'Solder LS1.',
    '',
  ].join('\n'),
  'parts.csv': 'Ref,Qty,Description,Value\nR1,1,Resistor,330R\nLS1,1,Speaker,8R\n',
  'log.md':
    '# Log\n\n## 2026-03-01\n\nThe speaker crackles.\n\nmistake: LS1 had one cold joint\nremedy: Solder it again\nstep: Fit the speaker\n\n## 2026-03-04\n\nmistake: R1 was 33 Ω\ncause: orange taken for brown\nstep: 1\n',
  'errata.md':
    '# Errata\n\n## 2026-04-02\n\nR1 was given as 330 Ω.\n\nright: It is 3.3 kΩ\nstep: Fit the resistors\neditions: revision A and B\nby: a reader\n\n## 2026-01-05\n\nThe speaker was called a buzzer.\n\nright: It is a speaker\nfixed: B\n',
};
