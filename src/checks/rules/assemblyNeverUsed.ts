import { slugOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const assemblyNeverUsed = defineCheck({
  id: 'assembly-never-used',
  title: 'What a step puts together, a later step uses.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A builder holds a finished piece at the end and cannot tell where it belongs.',
  basis: 'common practice: keep count of what exists',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'assembly-never-used' || stop.step === null) continue;
      yield {
        subjects: [`part:${slugOf(stop.name)}`],
        sides: stop.claim?.places ?? [],
        message: `The step ${stepName(build, stop.step)} makes ${stop.name}; no later step speaks of it.`,
        consequence: 'A builder has it on the table at the end and does not know where it goes.',
        remedy: `Name ${stop.name} among the parts of the step that builds it in, or leave the label out.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'built in by label, by its words, by a wire to a part of it; the last one is the thing itself',
        files: {
          'guide.md':
            '# Night light\n\n## Build the lamp head\n\n- Parts: D1\n- Makes: lamp head\n\nSolder.\n\n## Build the foot\n\n- Parts: R1\n- Makes: wooden foot\n\nScrew.\n\n## Build the switch box\n\n- Parts: SW1\n- Makes: box\n\nScrew.\n\n## Join them\n\n- Parts: lamp head\n- Connects: SW1.1 – R1.1\n- Makes: desk light\n\nPut it on the foot.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\nR1,1,Resistor 150 Ω\nSW1,1,Switch\n',
        },
      },
      {
        title: 'made, then the thing that bears the title',
        files: {
          'guide.md':
            '# Night light\n\n## Build it\n\n- Parts: D1\n- Makes: night light\n\nSolder.\n\n## Test\n\n- Power: on\n\nLook.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\n',
        },
      },
    ],
    fails: [
      {
        title: 'nobody mounts the lamp head',
        files: {
          'guide.md':
            '# Night light\n\n## Build the crown\n\n- Parts: D1\n- Makes: crown\n\nSolder.\n\n## Close the box\n\n- Parts: lid\n\nScrew the lid shut.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\n,1,Lid\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'crown' }],
      },
      {
        title: 'one of two is left',
        files: {
          'guide.md':
            '# Night light\n\n## Build two things\n\n- Parts: D1, R1\n- Makes: crown, plinth\n\nSolder.\n\n## Mount\n\n- Parts: crown\n\nScrew.\n\n## Look\n\nIt glows.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED\nR1,1,Resistor 150 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'plinth' }],
      },
    ],
  },
});
