import type { Place } from '#core/place.ts';
import { slugOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed, stepName } from '../say.ts';

export const toolNotListed = defineCheck({
  id: 'tool-not-listed',
  title: 'Every tool that a step needs stands in the list of tools.',
  weight: 'slows',
  audience: 'builder',
  why: 'A builder finds out in the middle of a step, with glue setting, which tool is lacking.',
  basis: 'common practice: tools of the steps, less those of the list',
  needs: { subject: ['steps', 'tools'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    const byTool = new Map<string, { tool: string; places: Place[]; steps: string[] }>();
    for (const stop of ledger.stops) {
      if (stop.kind !== 'tool-not-listed' || stop.step === null) continue;
      const entry = byTool.get(slugOf(stop.tool)) ?? { tool: stop.tool, places: [], steps: [] };
      entry.places.push(...(stop.claim?.places ?? []));
      entry.steps.push(stepName(build, stop.step));
      byTool.set(slugOf(stop.tool), entry);
    }
    for (const [slug, { tool, places, steps }] of byTool) {
      yield {
        subjects: [`tool:${slug}`],
        sides: places,
        message: `${listed(steps)} ${steps.length === 1 ? 'needs' : 'need'} ${tool}; the list of tools does not hold it.`,
        consequence: 'A builder starts without it and has to stop.',
        remedy: `Add ${tool} to the list of tools.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'a shorter name, and the plural',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Tools: iron, side cutter\n\nSolder it, and cut the legs.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\nSide cutters,yes\n',
        },
      },
      {
        title: 'no list of tools: the steps name them',
        outcome: 'does-not-apply',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Tools: soldering iron\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
        },
      },
    ],
    fails: [
      {
        title: 'a crimping tool that only the step knows of',
        files: {
          'guide.md': '# Night light\n\n## Make the lead\n\n- Parts: D1\n- Tools: crimping tool\n\nCrimp both ends.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\nSide cutters,yes\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'crimping tool' }],
      },
      {
        title: 'one tool, lacking in two steps, is one finding',
        files: {
          'guide.md':
            '# Night light\n\n## Drill the lid\n\n- Parts: D1\n- Tools: step drill\n\nDrill.\n\n## Drill the base\n\n- Tools: step drill, soldering iron\n\nDrill.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'step drill' }],
      },
    ],
  },
});
