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
  const { grave, word } = cautionFor(hazard);
  if (hazard === 'solder-to-cell' || hazard === 'wet-mains') return 'slows';
  return grave ? 'halts' : word === 'notice' ? 'tidy' : 'slows';
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
