import { slugOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed, numbered } from '../say.ts';

export const toolNeverUsed = defineCheck({
  id: 'tool-never-used',
  title: 'Every tool of the list has its use in a step.',
  weight: 'tidy',
  audience: 'builder',
  words: 'English',
  why: 'A builder buys or borrows a tool and never learns what for.',
  basis: 'common practice: tools of the list, less those of the steps',
  needs: { subject: ['steps', 'tools'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    const names = ledger.stops.flatMap((stop) => (stop.kind === 'tool-never-used' ? [stop.tool] : []));
    const [first] = names;
    if (first === undefined) return;
    yield {
      subjects: [`tool:${slugOf(first)}`],
      mark: 'never-used',
      sides: build.tools
        .filter(({ name }) => names.includes(name))
        .slice(0, 5)
        .map(({ place }) => place),
      message: `The list of tools holds ${numbered(names.length, 'tool')} that no step uses: ${listed(names)}.`,
      consequence: 'A builder gets hold of a tool for nothing, or wonders which step left it out.',
      remedy: 'Name it in the step that needs it, mark it as nice to have, or take it off the list.',
    };
  },
  examples: {
    passes: [
      {
        title: 'named by a fact, by the words of a step, by the work it does',
        files: {
          'guide.md':
            '# Night light\n\n## Solder it\n\n- Tools: soldering iron, tweezers\n\nStrip the wire. Hold the board with the clamp.\n',
          'tools.csv': 'name,needed\nSoldering iron,yes\nTweezers,yes\nWire strippers,yes\nClamp,yes\n',
        },
      },
      {
        title: 'nice to have, and a guide that names few tools at all',
        files: {
          'guide.md': '# Night light\n\n## Solder it\n\n- Tools: soldering iron\n\nJoin it.\n',
          'tools.csv': 'name,needed\nSoldering iron,yes\nMagnifier,no\n',
        },
      },
    ],
    fails: [
      {
        title: 'a file nobody needs',
        files: {
          'guide.md': '# Night light\n\n## Solder it\n\n- Tools: soldering iron, tweezers\n\nJoin it.\n',
          'tools.csv': 'name,needed\nSoldering iron,yes\nTweezers,yes\nMagnifier,yes\n',
        },
        expect: [{ file: 'tools.csv', line: 4, words: 'Magnifier' }],
      },
      {
        title: 'two in one finding',
        files: {
          'guide.md': '# Night light\n\n## Solder it\n\n- Tools: soldering iron, tweezers\n\nJoin it.\n',
          'tools.csv': 'name,needed\nSoldering iron,yes\nTweezers,yes\nMagnifier,yes\nCaliper,yes\n',
        },
        expect: [{ file: 'tools.csv', line: 5, words: '2 tools' }],
      },
    ],
  },
});
