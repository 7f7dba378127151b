import type { Part } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { type Body, bodiesIn, inchCodes, metricCodes, sameBody, twinCodes } from '../bodies.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { firstRows, fittedRows, rowName } from '../partWords.ts';
import { listed } from '../say.ts';

export const packageDiffers = defineCheck({
  id: 'package-differs',
  title: 'The body of a part is the same in its package, its footprint, its description and its part number.',
  weight: 'slows',
  audience: 'builder',
  why: 'A part that does not fit its place is found out after delivery, and has to be ordered again.',
  basis: 'EIA and IEC size codes; JEDEC names of bodies',
  needs: { subject: ['parts'], witnesses: [] },
  *run({ build }) {
    for (const part of fittedRows(build)) yield* withinTheRow(part);
    for (const { file } of build.partsLists)
      yield* twoSystems(fittedRows(build).filter(({ place }) => place.file === file));
  },
  examples: {
    passes: [
      {
        title: 'inch and metric names of one body, and a part number that agrees',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Package,Footprint,MPN\nR1,1,Resistor 1608 10k,0603,R_0603_1608Metric,AB0603K103\nC1,1,Capacitor 100 nF,C_0805_2012Metric,,C2012X7R104\nU1,1,Timer SO-8,SOIC-8,,\nR2,1,Resistor 0603,R_0603_1608Metric_Pad0.98x0.95mm,,\n',
        },
      },
      {
        title: 'adapters, sizes in millimetres and numbers that are no sizes',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Package\nU1,1,SOIC-8 chip on an adapter,DIP-8\nR1,1,Resistor 2512 in a bag of 1206 pieces,axial 6.3 mm\nLED1,1,LED 5 mm,5 mm\nX3,1,IC socket DIP-14,DIP-14\n',
        },
      },
    ],
    fails: [
      {
        title: 'the land is an 0805, the part number an 0603',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Package,MPN\nC1,1,Capacitor 100 nF,0805,AB0603K104\nR1,1,Resistor 10k 1206,0603,\n',
        },
        expect: [
          { file: 'parts.csv', line: 2, words: '0603' },
          { file: 'parts.csv', line: 3, words: '1206' },
        ],
      },
      {
        title: 'a chip for holes on a place for pads, and one with too many legs',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Package,Footprint\nU1,1,Timer DIP-8,SOIC-8,\nU2,1,Buffer,DIP-14,DIP-16_W7.62mm\n',
        },
        expect: [
          { file: 'parts.csv', line: 2, words: 'DIP-8' },
          { file: 'parts.csv', line: 3, words: 'DIP-16' },
        ],
      },
      {
        title: 'an 0603 among metric sizes may be either of two',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Package\nR1,1,Resistor 10k,0603\nC1,1,Capacitor 100 nF,2012\nC2,1,Capacitor 1 µF,3216\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '0603' }],
      },
    ],
  },
});

interface Said {
  readonly body: Body;
  readonly where: string;
  readonly place: Place;
}

const carriesAnother = /\b(?:adapt[eo]r|breakout|socket|carrier|module|board|or)\b/iu;

function* withinTheRow(part: Part): Iterable<FindingDraft> {
  const said = bodiesOf(part);
  const [first] = said;
  const other = said.find(({ body }) => first !== undefined && !sameBody(first.body, body));
  if (first === undefined || other === undefined || carriesAnother.test(part.description)) return;
  const isSmaller = first.body.area !== null && other.body.area !== null && other.body.area < first.body.area;
  yield {
    subjects: [`part:${part.id}`],
    sides: [first.place, other.place],
    basis: 'read',
    message: `${rowName(part)} is ${first.body.words} by its ${first.where} and ${other.body.words} by its ${other.where}.`,
    consequence: isSmaller
      ? 'A builder cannot tell whether the smaller part is meant for the larger place, and it is harder to solder there.'
      : 'A builder buys one of the two, and it may not fit its place on the board.',
    remedy: isSmaller
      ? 'Write in a note that the smaller part is meant, or correct the one that is wrong.'
      : 'Correct the one that is wrong.',
  };
}

function bodiesOf(part: Part): Said[] {
  const sources = [
    { where: 'package', words: part.package ?? '', place: part.cells.package },
    ...Object.entries(part.other)
      .filter(([header]) => /footprint|package/iu.test(header))
      .map(([, words]) => ({ where: 'footprint', words, place: undefined })),
    { where: 'description', words: part.description, place: part.cells.description },
    { where: 'part number', words: part.mpn ?? '', place: part.cells.mpn },
  ];
  return sources.flatMap(({ where, words, place }) =>
    bodiesIn(words, where).map((body) => ({ body, where, place: place ?? part.place })),
  );
}

/** 0603 beside 2012 and 3216, and nowhere a code that is certainly in inches: the 0603 may be 0.6 mm long. */
function* twoSystems(parts: readonly Part[]): Iterable<FindingDraft> {
  const bodies = parts.flatMap((part) => bodiesOf(part).map(({ body }) => ({ part, body })));
  const metric = bodies.filter(({ body }) => metricCodes.has(body.words));
  if (new Set(metric.map(({ part }) => part)).size < 2) return;
  if (bodies.some(({ body }) => inchCodes.has(body.words) || /metric|inch|imperial/iu.test(body.words))) return;
  const settled = new Set(bodies.filter(({ body }) => body.chips.length === 1).map(({ part }) => part));
  const unclear = bodies.filter(({ part, body }) => twinCodes.has(body.words) && !settled.has(part));
  const [first] = unclear;
  if (first === undefined) return;
  const rows = [...new Set(unclear.map(({ part }) => part))];
  yield {
    subjects: ['build:parts'],
    mark: 'two-systems',
    sides: [...firstRows(rows), ...firstRows(metric.slice(0, 1).map(({ part }) => part))],
    basis: 'read',
    message: `${listed(rows.map(rowName))} ${rows.length === 1 ? 'has' : 'have'} the size ${first.body.words}, which is one body in inches and a much smaller one in metric codes; the other sizes of the list are metric.`,
    consequence: 'A builder may order a part of less than half the length.',
    remedy: 'Write the system behind the size, such as ‘0603 (1608 metric)’.',
  };
}
