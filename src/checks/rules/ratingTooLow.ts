import type { Build } from '#core/build.ts';
import type { Connection, Endpoint } from '#core/connection.ts';
import type { Part } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import { powerPinOf } from '#notation/powerPin.ts';
import { netsOf } from '#rehearsal/nets.ts';
import { defineCheck } from '../defineCheck.ts';
import { partKind } from '../partKind.ts';
import { fittedRows, rowName } from '../partWords.ts';

export const ratingTooLow = defineCheck({
  id: 'rating-too-low',
  title: 'A capacitor stands the voltage of the rail that it is wired to.',
  weight: 'halts',
  audience: 'builder',
  why: 'A capacitor above its voltage heats up and bursts, at first power or weeks later.',
  basis: 'IEC 60384: the voltage across a capacitor stays below its rated voltage',
  needs: { subject: ['parts', 'wiring'], witnesses: [] },
  *run({ build }) {
    for (const part of fittedRows(build)) {
      const rated = ratedVolts(part);
      const across = voltsAcross(part, build);
      if (rated === null || across === null || rated >= across.volts) continue;
      yield {
        subjects: [`part:${part.id}`],
        sides: [part.cells.rating ?? part.cells.value ?? part.place, ...across.places],
        message: `${rowName(part)} is rated ${rated} V; the wiring puts it across ${across.volts} V.`,
        consequence: 'The capacitor heats up and can burst in front of whoever built it.',
        remedy: `Take one for at least ${Math.ceil(across.volts * 1.5)} V, or correct the wiring or the rating.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'a higher rating is fine, and a capacitor behind a regulator sees the lower rail',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Value,Rating\nC1,1,Electrolytic capacitor,100 µF,25 V\nC2,1,Ceramic capacitor,10 µF,6.3 V\nU1,1,Regulator LD1117,,\nJ1,1,Jack,,\n',
          'wiring.csv': 'from,to,net\nJ1.1,C1.+,+12V\nJ1.2,C1.-,GND\nC1.+,U1.IN,+12V\nU1.OUT,C2.1,3V3\nC2.2,C1.-,GND\n',
        },
      },
      {
        title: 'a coupling capacitor between two signals, and nets without volts in their names',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Value,Rating\nC1,1,Capacitor,1 µF,6.3 V\nC2,1,Capacitor,1 µF,6.3 V\nU1,1,Amplifier,,\n',
          'wiring.csv': 'from,to,net\nU1.OUT,C1.1,AUDIO\nC1.2,U1.IN,AUDIO_IN\nU1.VCC,C2.1,VIN\nC2.2,U1.GND,GND\n',
        },
      },
    ],
    fails: [
      {
        title: 'a 10 V capacitor on the 12 V rail',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Value,Rating\nC1,1,Electrolytic capacitor,100 µF,10 V\nJ1,1,Jack,,\n',
          'wiring.csv': 'from,to,net\nJ1.1,C1.+,+12V\nJ1.2,C1.-,GND\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '12 V' }],
      },
      {
        title: 'the rail is known by a pin further along the net, and by the name of a fuse behind the jack',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Value\nC1,1,Ceramic capacitor,10 µF 4 V\nU1,1,Board,\nU2,1,Sensor,\n',
          'wiring.csv': 'from,to\nU1.5V,U2.VCC\nU2.VCC,C1.1\nC1.2,U1.GND\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '5 V' }],
      },
    ],
  },
});

/** The rated voltage of a capacitor, where its row gives one alone. */
function ratedVolts(part: Part): number | null {
  if (partKind(part) !== 'capacitor') return null;
  const volts = part.ratings.filter(({ kind }) => kind === 'voltage');
  const [only] = volts;
  return only === undefined || volts.length > 1 ? null : only.si;
}

interface Across {
  readonly volts: number;
  readonly places: readonly Place[];
}

/** The voltage between the two ends of a part; null where the names of its nets do not tell. */
function voltsAcross(part: Part, { connections }: Build): Across | null {
  return acrossBy(connections)(part);
}

const acrossBy = rememberFor((connections: readonly Connection[]) =>
  rememberFor((part: Part) => acrossIn(connections, part)),
);

function acrossIn(connections: readonly Connection[], part: Part): Across | null {
  const [ref, another] = part.refs;
  if (ref === undefined) return null;
  const wires = wiresOf(connections);
  const rows = [...new Set(part.refs.flatMap((one) => wires.get(one) ?? []))];
  if (rows.length === 0) return null;
  const nets = netsOf(connections);
  const found = (another === undefined ? [ref] : part.refs).flatMap((one): Across[] => {
    const pins = new Map(
      rows.flatMap(({ from, to }) => [from, to].filter((end) => end.ref === one).map((end) => [end.pin, end] as const)),
    );
    const volts = [...pins.values()].map((end) => voltsAt(end, nets));
    const [a, b] = volts;
    if (volts.length !== 2 || typeof a !== 'number' || typeof b !== 'number' || (a !== 0 && b !== 0)) return [];
    const places = rows.filter(({ from, to }) => from.ref === one || to.ref === one).map(({ place }) => place);
    return [{ volts: Math.abs(a - b), places }];
  });
  return found.sort((x, y) => y.volts - x.volts)[0] ?? null;
}

/** The rows of the wiring by the parts that they join. */
const wiresOf = rememberFor((connections: readonly Connection[]) => {
  const wires = new Map<string, Connection[]>();
  for (const row of connections) {
    for (const ref of new Set([row.from.ref, row.to.ref])) wires.set(ref, [...(wires.get(ref) ?? []), row]);
  }
  return wires;
});

/** Ground is 0; a rail has the volts of its name. Null where the net has neither name, or two that differ. */
function voltsAt(end: Endpoint, nets: ReturnType<typeof netsOf>): number | null {
  const names = [
    ...nets.namesAt(end).map((name) => name.replace(/[_ -]?(?:IN|OUT|RAIL|SW)$/iu, '')),
    ...nets.endsOn(end).map(({ pin }) => pin),
  ];
  const known = names.flatMap((name) => {
    const pin = powerPinOf(name.toUpperCase());
    if (pin?.is === 'ground') return [0];
    return pin?.is === 'rail' ? [pin.volts] : [];
  });
  const different = new Set(known);
  return different.size === 1 ? (known[0] ?? null) : null;
}
