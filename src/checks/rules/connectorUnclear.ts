import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import { tokensOf } from '#notation/names.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import table from '../knowledge/connectors.json';
import { partKind } from '../partKind.ts';
import { firstRows, fittedRows, isDetailedList, rowName, rowWords } from '../partWords.ts';
import { listed } from '../say.ts';

export const connectorUnclear = defineCheck({
  id: 'connector-unclear',
  title: 'Connectors and wires are named so that one kind alone is meant.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Connectors that look alike in a picture do not mate, and the wrong one shows when the parcel is there.',
  basis: 'common practice: series, pitch and positions for connectors, gauge and length for wire',
  needs: { subject: ['parts'], witnesses: [] },
  *run({ build }) {
    const rows = fittedRows(build).filter(({ mpn }) => mpn === null);
    if (rows.length < 3) return;
    yield* looseNames(rows);
    yield* otherPitches(fittedRows(build));
    if (isDetailedList(build)) yield* loosewires(rows, build);
  },
  examples: {
    passes: [
      {
        title: 'series, pitch, shape and positions are said, or a part number settles them',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description,MPN\n1,JST PH plug 2-pin,\n1,JST-XH connector 3 way,\n1,"JST plug, 1.25 mm pitch",\n1,Barrel jack 5.5 × 2.1 mm,\n1,USB-C cable,\n1,Micro USB socket,\n1,Screw terminal 2 way 5.08 mm,\n1,Pin header 1x4,\n1,Socket header,FH-15\n0.5 m,Wire 24 AWG,\n1,Jumper wires,\n',
        },
      },
      {
        title: 'a slip with two things, and wires whose gauge the wiring tells',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nR1,1,Resistor\nD1,1,LED\nR2,1,Resistor\nR3,1,Resistor\nW1,1 m,Wire red\n',
          'wiring.csv': 'from,to,net,gauge,length\nR1.2,D1.A,LAMP,24 AWG,5 cm\n',
        },
      },
    ],
    fails: [
      {
        title: 'a bare JST, a barrel jack without a size, a header without positions',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description\n1,White LED 5 mm\n1,JST connector\n1,Barrel jack\n2,Pin header\n1,USB cable\n1,Screw terminal 2 way\n',
        },
        expect: [{ file: 'parts.csv', line: 3, words: 'which series' }],
      },
      {
        title: 'a series that never has this pitch, and wire of no gauge',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Quantity,Description\n1,White LED 5 mm\n1,"JST PH plug, pitch 2.54 mm"\n1,Resistor\n1,Lid\n1,Red wire\n',
        },
        expect: [
          { file: 'parts.csv', line: 3, words: '2.54 mm' },
          { file: 'parts.csv', line: 6, words: 'gauge' },
        ],
      },
    ],
  },
});

function* looseNames(rows: readonly Part[]): Iterable<FindingDraft> {
  const loose = rows.flatMap((part) => {
    const open = openQuestion(part);
    return open === null ? [] : [{ part, open }];
  });
  if (loose.length === 0) return;
  yield {
    subjects: ['build:parts'],
    mark: 'connectors',
    sides: firstRows(loose.map(({ part }) => part)),
    basis: 'read',
    message: `${loose.length === 1 ? 'A connector is' : `${loose.length} connectors are`} named too loosely to order: ${listed(loose.map(({ part, open }) => `${rowName(part)} (${open})`))}.`,
    consequence: 'A builder orders one that looks the same and does not mate or does not fit the holes.',
    remedy: `Add what is open to ${loose.length === 1 ? 'the row' : 'each row'}, or a maker's part number.`,
  };
}

function openQuestion(part: Part): string | null {
  const words = rowWords(part);
  const tokens = ` ${tokensOf(words).join(' ')} `;
  const kind = partKind(part);
  const family = table.families.find(
    (one) =>
      kind !== null &&
      one.kinds.includes(kind) &&
      one.words.some((word) => tokens.includes(` ${tokensOf(word).join(' ')} `)),
  );
  if (family === undefined) return null;
  const isSettled =
    family.settled.some((pattern) => new RegExp(pattern, 'iu').test(words)) ||
    (family.words.includes('jst') && (seriesOf(words) !== null || /\d\s?mm/u.test(words)));
  return isSettled ? null : family.open;
}

const allSeries = [...Object.keys(table.jstPitch), ...table.fromMemory].sort((a, b) => b.length - a.length);
const series = new RegExp(
  `(?<![\\p{L}\\d])(?:JST[- ]?)?(${allSeries.join('|')})(?:[- ]?\\d{1,2}[A-Z]?)?(?![\\p{L}\\d])`,
  'u',
);

function seriesOf(words: string): string | null {
  return /jst/iu.test(words) ? (series.exec(words)?.[1] ?? null) : null;
}

/** A series has one pitch. */
function* otherPitches(rows: readonly Part[]): Iterable<FindingDraft> {
  for (const part of rows) {
    const words = rowWords(part);
    const name = seriesOf(words);
    const pitch = name === null ? undefined : (table.jstPitch as Readonly<Record<string, number>>)[name];
    const said = /pitch:? ?(\d+(?:[.,]\d+)?) ?mm|(\d+(?:[.,]\d+)?) ?mm[- ]pitch/iu.exec(words);
    const stated = Number((said?.[1] ?? said?.[2] ?? 'x').replace(',', '.'));
    if (pitch === undefined || Number.isNaN(stated) || Math.abs(stated - pitch) < 0.02) continue;
    yield {
      subjects: [`part:${part.id}`],
      mark: 'pitch',
      sides: [part.place],
      basis: 'read',
      message: `${rowName(part)} is of the series ${name}, of which the pins are ${pitch} mm apart, and is said to have a pitch of ${stated} mm.`,
      consequence: 'A builder buys by the series or by the pitch, and one of the two does not fit.',
      remedy: 'Correct the series or the pitch.',
    };
  }
}

function* loosewires(rows: readonly Part[], build: Build): Iterable<FindingDraft> {
  if (build.connections.some(({ gauge }) => gauge !== null)) return;
  const patterns = table.gauge.map((pattern) => new RegExp(pattern, 'iu'));
  const loose = rows.filter((part) => {
    const words = rowWords(part);
    return (
      partKind(part) === 'wire' &&
      !patterns.some((pattern) => pattern.test(words)) &&
      !table.noGauge.some((word) => words.toLowerCase().includes(word))
    );
  });
  if (loose.length === 0) return;
  yield {
    subjects: ['build:parts'],
    mark: 'wires',
    sides: firstRows(loose),
    basis: 'read',
    message: `${listed(loose.map(rowName))} ${loose.length === 1 ? 'has' : 'have'} no gauge.`,
    consequence: 'A builder takes wire that is too thin for the current or too thick for the holes.',
    remedy: 'Add the gauge, such as 24 AWG or 0.25 mm², and the length needed.',
  };
}
