import type { Judged } from '#core/assembled.ts';
import { type Connection, endpointId } from '#core/connection.ts';
import { mayBeRowOf } from '#rehearsal/compareJoin.ts';
import { netsOf } from '#rehearsal/nets.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { stepName } from '../say.ts';

export const wireNeverMade = defineCheck({
  id: 'wire-never-made',
  title: 'The steps make every wire of the wiring table, once, and no others.',
  weight: 'halts',
  audience: 'builder',
  why: 'Most faults that stop a beginner are in the circuit: one wire that no step speaks of is enough.',
  basis: 'Booth et al., CHI 2016: fatal faults of beginners lie in the wiring; common practice to compare wire by wire',
  grave: true,
  needs: { subject: ['steps', 'wiring'], witnesses: [] },
  rehearsal: true,
  *run(judged) {
    yield* neverMade(judged);
    yield* notInWiring(judged);
    yield* madeTwice(judged);
    yield* besideTheRows(judged);
  },
  examples: {
    passes: [
      {
        title: 'every wire is made, one of them along another way round the same net',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1, PS1\n- Connects: D1.A – R1.2, R1.1 – PS1.PLUS\n\nSolder.\n\n## Join the grounds\n\n- Parts: SW1\n- Connects: D1.K – SW1.2, SW1.2 – PS1.MINUS\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\nSW1,1,Switch\n',
          'wiring.csv': 'from,to,net\nD1.A,R1.2,LAMP\nR1.1,PS1.PLUS,5V\nD1.K,PS1.MINUS,GND\nSW1.2,PS1.MINUS,GND\n',
        },
      },
      {
        title: 'a guide that declares no connections says nothing about them',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n\nSolder both to the board.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to,net\nD1.A,R1.2,LAMP\n',
        },
      },
    ],
    fails: [
      {
        title: 'a table that counts its pins by name has forgotten one of them',
        files: {
          'guide.md':
            '# Keys\n\n## Wire the keys\n\n- Parts: U1, K1\n- Connects: U1.4 – K1.ROW1, U1.A0 – K1.COL1, U1.A1 – K1.COL2, U1.A2 – K1.COL3\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Controller board\nK1,1,Keypad\n',
          'wiring.csv': 'from,to,net\nU1.4,K1.ROW1,\nU1.A1,K1.COL2,\nU1.A2,K1.COL3,\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'U1.A0 – K1.COL1' }],
      },
      {
        title: 'a row is forgotten that only the name of its net makes up for',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1, PS1, SW1\n- Connects: D1.A – R1.2, R1.1 – PS1.PLUS, D1.K – PS1.MINUS, SW1.1 – SW2.1, D1.K – SW1.1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\n"SW1, SW2",2,Switch\n',
          'wiring.csv': 'from,to,net\nD1.A,R1.2,LAMP\nR1.1,PS1.PLUS,5V\nD1.K,PS1.MINUS,GND\nSW1.1,SW2.1,GND\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'D1.K – SW1.1' }],
      },
      {
        title: 'the ground wire is in the table and in no step',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1, PS1\n- Connects: D1.A – R1.2, R1.1 – PS1.PLUS\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\n',
          'wiring.csv': 'from,to,net\nD1.A,R1.2,LAMP\nR1.1,PS1.PLUS,5V\nD1.K,PS1.MINUS,GND\n',
        },
        expect: [{ file: 'wiring.csv', line: 4, words: 'D1.K' }],
      },
      {
        title: 'a step makes a wire past the resistor',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1, PS1\n- Connects: D1.A – R1.2, R1.1 – PS1.PLUS, D1.K – PS1.MINUS\n\nSolder.\n\n## Brighter\n\n- Connects: D1.A – PS1.PLUS\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\n',
          'wiring.csv': 'from,to,net\nD1.A,R1.2,LAMP\nR1.1,PS1.PLUS,5V\nD1.K,PS1.MINUS,GND\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: 'PS1.PLUS' }],
      },
      {
        title: 'one wire is soldered in two steps',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n- Connects: D1.A – R1.2\n\nSolder.\n\n## Fit the resistor\n\n- Connects: R1.2 – D1.A\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to,net\nD1.A,R1.2,LAMP\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: 'again' }],
      },
    ],
  },
});

/** A wire that a step makes to the wrong pin is another check's finding, not a missing wire too. */
function* neverMade({ build, ledger }: Judged): Iterable<FindingDraft> {
  const misplaced = new Set(
    ledger.stops.flatMap((stop) => (stop.kind === 'connection-not-in-wiring' ? [stop.nearest] : [])),
  );
  const rows = new Map(build.connections.map((row): [string, Connection] => [row.id, row]));
  for (const stop of ledger.stops) {
    if (stop.kind !== 'connection-never-made' || misplaced.has(stop.connection)) continue;
    const row = rows.get(stop.connection);
    if (row === undefined) continue;
    const net = row.net === null ? '' : ` (net ${row.net})`;
    yield {
      subjects: [`connection:${row.id}`],
      sides: [row.place],
      message: `The wiring joins ${wire(row)}${net}; no step makes that connection.`,
      consequence: 'A builder ends with a wire missing, and the thing does not work as shown.',
      remedy: 'Name the connection in the step that makes it, or take the row out of the wiring.',
    };
  }
}

function* notInWiring({ build, ledger }: Judged): Iterable<FindingDraft> {
  for (const stop of ledger.stops) {
    if (stop.kind !== 'connection-not-in-wiring' || stop.nearest !== null || stop.step === null) continue;
    const near = build.connections.filter(({ from, to }) =>
      [from, to].some((end) => [stop.join.from, stop.join.to].some((other) => endpointId(end) === endpointId(other))),
    );
    yield {
      subjects: [`connection:${stop.join.id}`],
      sides: [...(stop.claim?.places ?? []), ...near.slice(0, 2).map(({ place }) => place)],
      weight: 'slows',
      message: `The step ${stepName(build, stop.step)} joins ${wire(stop.join)}; the wiring holds no such connection.`,
      consequence: 'A builder makes a connection that the circuit does not have.',
      remedy: 'Add the row to the wiring, or take the connection out of the step.',
    };
  }
}

function* madeTwice({ build, facts, ledger }: Judged): Iterable<FindingDraft> {
  for (const stop of ledger.stops) {
    if (stop.kind !== 'connection-made-twice' || stop.step === null) continue;
    const first = facts.steps[stop.before]?.connects.find(({ value }) => value.id === stop.join.id);
    yield {
      subjects: [`connection:${stop.join.id}`],
      mark: 'twice',
      sides: [...(stop.claim?.places ?? []), ...(first?.places ?? [])],
      weight: 'slows',
      message: `The step ${stepName(build, stop.step)} makes ${wire(stop.join)} again; ${stepName(build, stop.before)} has made it already.`,
      consequence: 'A builder wonders whether a second wire is meant.',
      remedy: 'Take the connection out of one of the two steps.',
    };
  }
}

/** Where nearly all connections of the steps are rows of the table, one that is none is one that the table forgot. */
const mostBeside = 0.2;

/** Connections that no row has, and whose ends only the name of a net holds together. */
function* besideTheRows({ build, facts }: Judged): Iterable<FindingDraft> {
  const joins = Object.entries(facts.steps).flatMap(([step, { connects }]) =>
    connects.map(({ value, places }) => ({ step, join: value, places })),
  );
  const named = netsOf(build.connections);
  const wired = netsOf(build.connections.map(({ from, to }) => ({ from, to })));
  const beside = joins.filter(
    ({ join }) =>
      join.connection === null &&
      named.joined(join.from, join.to) &&
      !wired.joined(join.from, join.to) &&
      !mayBeRowOf(join, build.connections),
  );
  if (beside.length > joins.length * mostBeside) return;
  for (const { step, join, places } of beside) {
    yield {
      subjects: [`connection:${join.id}`],
      mark: 'beside',
      sides: places,
      weight: 'tidy',
      message: `The step ${stepName(build, step)} joins ${wire(join)}; no row of the wiring does, though both ends are on the net ${named.namesAt(join.from)[0] ?? ''}.`,
      consequence:
        'A builder who ticks off the rows has made a wire that the table does not show, and looks for a mistake.',
      remedy: 'Add the row to the wiring, or take the connection out of the step.',
    };
  }
}

function wire({ from, to }: Pick<Connection, 'from' | 'to'>): string {
  return `${endpointId(from)} – ${endpointId(to)}`;
}
