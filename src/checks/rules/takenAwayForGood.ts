import type { Judged } from '#core/assembled.ts';
import { endpointId } from '#core/connection.ts';
import type { Place } from '#core/place.ts';
import { defineCheck } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const takenAwayForGood = defineCheck({
  id: 'taken-away-for-good',
  title: 'What the finished circuit needs is put back after it was taken away.',
  weight: 'halts',
  audience: 'builder',
  why: 'A wire that was lifted for a test and never put back leaves a thing that does not work at the end.',
  basis: 'common practice: hold the end of the steps against the wiring table',
  needs: { subject: ['steps', 'wiring'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.step === null) continue;
      if (stop.kind !== 'connection-taken-away' && stop.kind !== 'part-taken-away') continue;
      const isWire = stop.kind === 'connection-taken-away';
      const row = isWire ? build.connections.find(({ id }) => id === stop.connection) : null;
      const what = isWire ? (row ? `${endpointId(row.from)} – ${endpointId(row.to)}` : stop.connection) : stop.ref;
      yield {
        subjects: isWire ? [`connection:${stop.connection}`] : [`part:${stop.part}`],
        mark: 'taken-away',
        sides: [...(stop.claim?.places ?? []), ...(row ? [row.place] : rowsOf(build, isWire ? '' : stop.ref))],
        weight: isWire ? 'halts' : 'slows',
        basis: isWire ? 'declared' : 'read',
        message: `The step ${stepName(build, stop.step)} takes away ${what}, which the wiring table holds; no later step puts it back.`,
        consequence: 'A builder who follows the steps ends with a circuit that lacks it.',
        remedy: isWire
          ? `Add ‘Connects: ${what}’ to the step that makes it again, or take the row out of the wiring table.`
          : `Name ${what} among the parts of the step that puts it back.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'a wire lifted and made again, a bridge that no table holds, a module that goes back',
        files: {
          'guide.md':
            '# Night light\n\n## Wire\n\n- Parts: R1, D1, U1\n- Connects: R1.1 – U1.D5, R1.2 – D1.A, D1.A – U1.3V3\n\nSolder.\n\n## Test\n\n- Removes: R1.1 – U1.D5, D1.A – U1.3V3, U1\n\nLift.\n\n## Close\n\n- Connects: R1.1 – U1.D5\n\nSolder, then press the module in again.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nD1,1,White LED\nU1,1,Controller board\n',
          'wiring.csv': 'from,to,net\nR1.1,U1.D5,A\nR1.2,D1.A,B\n',
        },
      },
      {
        title: 'a row that is meant for the test',
        files: {
          'guide.md':
            '# Night light\n\n## Wire\n\n- Parts: R1, U1\n- Connects: R1.1 – U1.D5\n\nSolder.\n\n## Test\n\n- Removes: R1.1 – U1.D5\n\nLift.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nU1,1,Controller board\n',
          'wiring.csv': 'from,to,net,note\nR1.1,U1.D5,A,for the test only\n',
        },
      },
    ],
    fails: [
      {
        title: 'lifted for a test',
        files: {
          'guide.md':
            '# Night light\n\n## Wire\n\n- Parts: R1, U1\n- Connects: R1.1 – U1.D5\n\nSolder.\n\n## Test\n\n- Removes: R1.1 – U1.D5\n\nLift, and probe.\n\n## Close\n\nPut the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nU1,1,Controller board\n',
          'wiring.csv': 'from,to,net\nR1.1,U1.D5,A\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: 'R1.1 – U1.D5' }],
      },
      {
        title: 'a module that nobody puts back',
        files: {
          'guide.md':
            '# Night light\n\n## Wire\n\n- Parts: R1, U1\n- Connects: R1.1 – U1.D5\n\nSolder.\n\n## Test\n\n- Removes: U1\n\nLift.\n\n## Close\n\nClose the lid.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nU1,1,Controller board\n',
          'wiring.csv': 'from,to,net\nR1.1,U1.D5,A\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: 'U1' }],
      },
    ],
  },
});

function rowsOf(build: Judged['build'], ref: string): Place[] {
  return build.connections
    .filter(({ from, to }) => from.ref === ref || to.ref === ref)
    .slice(0, 1)
    .map(({ place }) => place);
}
