import { describe, expect, it } from 'vitest';
import type { ExampleFiles } from '#checks/defineCheck.ts';
import { judge } from '#checks/judge.ts';
import { hazardNotNamed } from '#checks/rules/hazardNotNamed.ts';
import type { Edit } from '#core/edit.ts';
import type { FoundHazard } from '#core/hazard.ts';
import { cautionFor, library } from '#prose/cautions/library.ts';
import { judgedFrom } from '../checks/judgedFrom.ts';
import { harmlessBuilds } from './harmlessBuilds.ts';
import { type HazardousBuild, hazardousBuilds } from './hazardousBuilds.ts';

describe('a build with one hazard', () => {
  it.each(hazardousBuilds)('that lacks its caution is found to bring just that: $hazard', async (build) => {
    const found = await hazardsOf(filesOf(build, ''));
    expect(found.filter(({ cover }) => cover !== 'covered').map(({ hazard }) => hazard)).toEqual([build.hazard]);
  });
  it.each(hazardousBuilds)('that has its caution lacks none: $hazard', async (build) => {
    const found = await hazardsOf(filesOf(build, build.caution));
    expect(found.map(({ hazard }) => hazard)).toContain(build.hazard);
    expect(found.filter(({ cover }) => cover !== 'covered').map(({ hazard, cover }) => `${hazard} ${cover}`)).toEqual(
      [],
    );
  });
  it.each(hazardousBuilds)('is mended by the words of the library: $hazard', async (build) => {
    const files = filesOf(build, '');
    const [finding, ...others] = judge(await judgedFrom(files), { checks: [hazardNotNamed] }).findings;
    expect(others).toEqual([]);
    expect(finding?.weight).toBe(expectedWeight(build.hazard));
    const mended = applied(finding?.mend ?? null, files);
    const after = await hazardsOf(mended);
    expect(after.filter(({ cover }) => cover !== 'covered')).toEqual([]);
  });
  it('is there for every entry of the library but those that another build shows', () => {
    const shown = new Set(hazardousBuilds.map(({ hazard }) => hazard));
    expect(library.map(({ id }) => id).filter((id) => !shown.has(id))).toEqual([
      'ultraviolet',
      'infrared',
      'bright-light',
    ]);
  });
});

describe('a caution', () => {
  const iron: HazardousBuild = { hazard: 'hot-iron', tools: ['soldering iron'], guide: '', caution: '' };
  const lacking = async (build: HazardousBuild) =>
    (await hazardsOf(filesOf(build, ''))).filter(({ cover }) => cover !== 'covered').map(({ hazard }) => hazard);

  it('about a lithium cell says nothing of the iron and its smoke', async () => {
    const cell = 'A lithium cell can burn and give off smoke. Keep metal away, and never solder to it.';
    const guide = `**Warning:** ${cell}\n\n## Fit the lamp\n\n- Power: off\n\nSolder D1 to the board.\n`;
    expect(await lacking({ ...iron, guide })).toEqual(['hot-iron', 'solder-fumes']);
  });
  it('with glasses for cut leads says nothing of the drill', async () => {
    const leads = 'Cut leads fly into eyes. Wear safety glasses.';
    const guide = `## Fit the lamp\n\n- Caution: ${leads}\n\nTrim the leads of D1.\n\n## Open the lid\n\nDrill a hole.\n`;
    expect(await lacking({ ...iron, tools: [], guide })).toEqual(['drilling']);
  });
  it('about the way round of a sensor says nothing of a capacitor', async () => {
    const guide =
      '## Fit C1\n\n- Parts: C1\n- Caution: The wrong way round kills U2. Check its pins.\n\nPush C1 into the breadboard.\n';
    const parts = ['C1,1,"Electrolytic capacitor, 100 µF, 16 V"'];
    expect(await lacking({ ...iron, tools: [], parts, guide })).toEqual(['polarity']);
  });
  it('is too late behind the sentence that takes the part up', async () => {
    const late = 'Notice: Static charge destroys Q1. Touch a grounded part first.';
    const guide = `## Fit Q1\n\n- Parts: Q1\n- Power: off\n\nPush Q1 in.\n\n${late}\n`;
    const found = await hazardsOf(filesOf({ ...iron, tools: [], parts: ['Q1,1,"N-channel MOSFET"'], guide }, ''));
    expect(found.map(({ hazard, cover }) => `${hazard} ${cover}`)).toEqual(['esd late']);
  });
  it('of a needle is about fingers, not about every needle', async () => {
    const guide = '## Sew\n\n- Tools: sewing needle\n\nSew four stitches.\n';
    expect(await lacking({ ...iron, tools: ['sewing needle'], guide })).toEqual(['needle']);
  });
});

describe('a hazard', () => {
  const bare: HazardousBuild = {
    hazard: '',
    caution: '',
    guide: '## Fit it\n\n- Parts: BT1\n- Power: off\n\nPut BT1 in.\n',
  };

  it('is not hidden by a word about another thing of its row', async () => {
    const parts = ['BT1,1,"Li-ion cell 18650, protected, no holder for alkaline cells"'];
    expect((await hazardsOf(filesOf({ ...bare, parts }, ''))).map(({ hazard }) => hazard)).toEqual(['lithium']);
  });
  it('of a capacitor is certain only with such a voltage in the build', async () => {
    const build = { ...bare, parts: ['C1,1,"Film capacitor, 100 µF, 400 V"'] };
    const [at12] = await hazardsOf(filesOf({ ...build, settings: 'supply: 12 V DC\n' }, ''));
    const [at350] = await hazardsOf(filesOf({ ...build, settings: 'supply: 350 V DC\n' }, ''));
    expect([at12?.basis, at350?.basis]).toEqual(['read', 'declared']);
  });
});

describe('a build that only sounds dangerous', () => {
  it.each(harmlessBuilds)('is found to bring nothing: $title', async (build) => {
    expect(
      (await hazardsOf(filesOf({ hazard: '', caution: '', ...build }, ''))).map(
        ({ hazard, why }) => `${hazard}: ${why}`,
      ),
    ).toEqual([]);
  });
});

/** Grave ones halt where a list or a step declares them. */
function expectedWeight(hazard: string): string {
  const { grave, word, everyday } = cautionFor(hazard);
  if (hazard === 'solder-to-cell' || hazard === 'wet-mains') return 'slows';
  return grave ? 'halts' : word === 'notice' || everyday ? 'tidy' : 'slows';
}

async function hazardsOf(files: ExampleFiles): Promise<readonly FoundHazard[]> {
  return (await judgedFrom(files)).facts.hazards;
}

function filesOf({ guide, parts = [], tools = [], wiring, settings }: HazardousBuild, caution: string): ExampleFiles {
  return {
    'guide.md': `# A thing\n\n${guide.replace('@', caution)}\n## Close it\n\n- Power: off\n\nPress the lid on.\n`,
    'parts.csv': ['Reference,Quantity,Description', 'D1,1,"White LED 5 mm"', ...parts, ''].join('\n'),
    'tools.csv': ['tool,needed', 'screwdriver,yes', ...tools.map((tool) => `"${tool}",yes`), ''].join('\n'),
    ...(wiring === undefined ? {} : { 'wiring.csv': ['from,to,net', ...wiring, ''].join('\n') }),
    ...(settings === undefined ? {} : { 'twicebuilt.yaml': `format: 1\n${settings}` }),
  };
}

function applied(mend: Edit | null, files: ExampleFiles): ExampleFiles {
  if (mend === null) throw new Error('no mend was offered');
  let text = String(files[mend.file]);
  for (const { span, text: words } of [...mend.changes].reverse())
    text = text.slice(0, span[0]) + words + text.slice(span[1]);
  return { ...files, [mend.file]: text };
}
