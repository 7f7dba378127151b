import { digestOf } from '#core/digest.ts';
import { defineCheck } from '../defineCheck.ts';

export const notReadable = defineCheck({
  id: 'not-readable',
  title: 'Everything that is meant to be read can be read.',
  weight: 'slows',
  audience: 'builder',
  why: 'What cannot be read cannot be checked, and is missing from the guide without a sound.',
  basis: 'common practice: what could not be read is said, with its place',
  needs: { subject: ['files'], witnesses: [] },
  *run({ build, facts }) {
    for (const { place, message, remedy } of [...build.problems, ...facts.problems]) {
      yield {
        subjects: [`file:${place.file}`],
        mark: digestOf(`${place.kind === 'text' ? place.quote : ''} ${message}`).slice(0, 6),
        sides: [place],
        message,
        consequence: 'What stands there is not checked, and a builder may not see it.',
        remedy,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'facts as their labels promise',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n- Time: 15 min\n\nSolder both.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
        },
      },
      {
        title: 'a folder of text alone',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder the LED to the board.\n' },
      },
    ],
    fails: [
      {
        title: 'a connection that joins only one end',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n- Connects: D1.A and the other one\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 6 }],
      },
      {
        title: 'a row of the wiring without a second end',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to,net\nD1.A,R1.2,LAMP\nD1.K,,GND\n',
        },
        expect: [{ file: 'wiring.csv', line: 3 }],
      },
    ],
  },
});
