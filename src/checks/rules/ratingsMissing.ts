import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import type { QuantityKind } from '#core/quantity.ts';
import { rememberFor } from '#core/remember.ts';
import { isPackage } from '#notation/codes.ts';
import { tokensOf } from '#notation/names.ts';
import { findQuantities } from '#notation/value.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { guideWords } from '../guideWords.ts';
import table from '../knowledge/requiredRatings.json';
import { type PartKind, partKind } from '../partKind.ts';
import { firstRows, fittedRows, hasTypeNumber, isDetailedList, rowName, rowWords } from '../partWords.ts';
import { listed } from '../say.ts';

export const ratingsMissing = defineCheck({
  id: 'ratings-missing',
  title: 'Every row says what a shop asks for: volts, watts, thread and length, plug.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Half a specification is what a builder guesses at: a capacitor that bursts, a screw that is too long.',
  basis: 'common practice: the ratings by which such parts are ordered',
  needs: { subject: ['parts'], witnesses: [] },
  *run({ build }) {
    if (!isDetailedList(build)) return;
    const lacking = lackingRatings(build);
    const parts = [...new Set(lacking.flatMap(({ rows }) => rows))];
    if (parts.length > 0) yield omission(parts, `${lacking.map(sentence).join('; ')}.`);
    const { gaps, filled } = gapsOfColumn(build);
    const others = gaps.filter((row) => !parts.includes(row));
    if (others.length === 0) return;
    const names = listed(others.map(rowName));
    const message = `${filled} rows fill the column of ratings; ${names} ${others.length === 1 ? 'leaves' : 'leave'} it empty.`;
    yield { ...omission(others, message), mark: 'column', weight: 'tidy' };
  },
  examples: {
    passes: [
      {
        title: 'a column of ratings that the printed parts and a type number leave empty',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Value,Rating,Package\nU1,1,Timer module,,5 V,\nS1,1,Push button,,12 V 50 mA,\nR1,1,"Resistor, axial",330 Ω,0.25 W,\nC1,1,Ceramic capacitor,100 nF,50 V,\nX1,1,Header socket,,3 A,\nR2,1,Resistor,10 kΩ,,0805\nD1,1,Diode 1N4148,,,\nMP1,1,"Base, printed",,,\n',
        },
      },
      {
        title: 'ratings in columns, in descriptions, in sizes, and settled by a part number',
        files: {
          'guide.md': '# Night light\n\n## Close the case\n\nDrive the screws with a PH1 screwdriver.\n',
          'parts.csv':
            'Reference,Quantity,Description,Value,Rating,Package,MPN\nC1,1,Electrolytic capacitor,100 µF,25 V,,\nC2,1,Capacitor 50V,100n,,0603,\nC3,1,Capacitor,10 µF,,,CX-10U16\nR1,1,Resistor,330 Ω,0.25 W,,\nR2,1,Resistor,10k,,0805,\nD1,1,Diode 1N4148,,,,\nLED1,1,LED red 5 mm,,,,\nF1,1,"Fuse, slow",500 mA,,,\n,4,"M3 × 8 screw, pan head",,,,\n,4,M3 × 10 standoff male-female,,,,\nBT1,1,LiPo cell 3.7 V 500 mAh,,,,\nPS1,1,USB power supply 5 V 2 A,,,,\n',
        },
      },
      {
        title: 'three things on a slip of paper',
        files: {
          'guide.md':
            '# Night light\n\n## Parts\n\n- 1 × white LED\n- 1 × resistor 150 Ω\n- 2 × battery\n\n## Fit the lamp\n\nSolder the LED to the board.\n',
        },
      },
      {
        title: 'holders, kits and knobs of parts that have ratings, and what is not fitted',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,DNP\nXB1,1,Battery holder for 2 cells,\nXF1,1,Fuse holder,\nMP1,1,Resistor kit,\nMP2,1,LED holder,\nMP3,1,Screw terminal 2 way 5.08 mm,\nC9,1,Capacitor 10 µF,DNP\n',
        },
      },
    ],
    fails: [
      {
        title: 'one of two resistors leaves the cell empty that all others fill',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description,Value,Rating\nU1,1,Timer module,,5 V\nS1,1,Push button,,12 V 50 mA\nR1,1,"Resistor, axial",330 Ω,0.25 W\nR2,1,"Resistor, axial",10 kΩ,\nC1,1,Ceramic capacitor,100 nF,50 V\nX1,1,Header socket,,3 A\n',
        },
        expect: [{ file: 'parts.csv', line: 5, words: 'R2 leaves it empty' }],
      },
      {
        title: 'capacitors without volts, screws without a length',
        files: {
          'guide.md': '# Night light\n\n## Close the case\n\nDrive the screws with a PH1 screwdriver.\n',
          'parts.csv':
            'Reference,Quantity,Description,Value,Package\nC1,1,Electrolytic capacitor,100 µF,\nC2,1,Ceramic capacitor 50 V,100n,\nR1,1,Resistor 0.25 W,330 Ω,\nLED1,1,LED white,,5 mm\n,4,M3 screw,,\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '1 of 2 capacitors gives no voltage' }],
      },
      {
        title: 'screws without a head, which a screwdriver of the guide does not tell, and standoffs without ends',
        files: {
          'guide.md': '# Night light\n\n## Close the case\n\nDrive the screws with a small phillips screwdriver.\n',
          'parts.csv':
            'Quantity,Description\n1,Night light kit\n1,Jar\n1,Lid\n4,M3 × 8 screw\n4,M3 × 10 standoff brass\n',
        },
        expect: [{ file: 'parts.csv', line: 5, words: 'gives no head' }],
      },
      {
        title: 'a supply without anything, a fuse without a speed, cells without a capacity',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nPS1,1,Power supply\nF1,1,Fuse 500 mA\nBT1,1,LiPo battery 3.7 V\nR1,1,Resistor 330 Ω 0.25 W\nR2,1,Resistor 1k 0.25 W\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'PS1 gives no voltage, current or plug' }],
      },
      {
        title: 'a screw that has only the thickness of the board beside it',
        files: {
          'guide.md': '# Night light\n\n## Close the case\n\nDrive the screws with a PH1 screwdriver.\n',
          'parts.csv':
            'Quantity,Description,Note\n4,M3 screw,long enough to go through a 1.6 mm board\n1,LED white,\n1,Lid,\n1,Base,\n1,Cell AA,\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'gives no length' }],
      },
    ],
  },
});

function omission(parts: readonly Part[], message: string): FindingDraft {
  return {
    subjects: ['build:parts'],
    sides: firstRows(parts),
    basis: 'read',
    message,
    consequence: 'A builder guesses in the shop, and buys a part that is too weak or does not fit.',
    remedy: `Add what is lacking to ${parts.length === 1 ? 'the row' : 'these rows'}, or a maker's part number that settles it.`,
  };
}

interface Need {
  readonly lacking: string;
  readonly quantities?: readonly string[];
  readonly words?: readonly string[];
  readonly patterns?: readonly string[];
  /** Chip sizes and other bodies count. */
  readonly size?: boolean;
  /** It counts where the guide's text says it. */
  readonly inGuide?: boolean;
  /** These count in the row alone. */
  readonly rowWords?: readonly string[];
  /** Asked only where one of these words is there. */
  readonly when?: readonly string[];
}

interface KindNeeds {
  readonly plural: string;
  readonly fastener?: boolean;
  readonly needs: readonly Need[];
}

interface Lacking {
  readonly kind: KindNeeds;
  readonly what: readonly string[];
  readonly rows: readonly Part[];
  readonly all: number;
}

const kinds = table.kinds as Partial<Record<PartKind, KindNeeds>>;

function lackingRatings(build: Build): Lacking[] {
  const guide = guideWords(build);
  const fitted = fittedRows(build).map((row) => ({ row, named: partKind(row) }));
  return Object.entries(kinds).flatMap(([name, kind]) => {
    const rows = fitted.filter(({ named }) => named === name).map(({ row }) => row);
    const poor = rows
      .map((row) => ({ row, what: kind.needs.filter((need) => isLacking(row, need, kind, build, guide)) }))
      .filter(({ what }) => what.length > 0);
    if (poor.length === 0) return [];
    const what = kind.needs.filter((need) => poor.some((one) => one.what.includes(need))).map(({ lacking }) => lacking);
    return [{ kind, what, rows: poor.map(({ row }) => row), all: rows.length }];
  });
}

const electrical: readonly QuantityKind[] = ['voltage', 'current', 'power'];

/**
 * Rows of resistors, capacitors and the like whose cell is empty in a column of ratings that nearly all others fill.
 * A maker's part number settles the rating, unless most of those that have one give the rating as well.
 */
function gapsOfColumn(build: Build): { gaps: Part[]; filled: number } {
  const rows = fittedRows(build);
  const filled = rows.filter(({ cells }) => cells.rating !== undefined);
  const withNumber = rows.filter(({ mpn, cells }) => mpn !== null && cells.rating !== undefined).length;
  const gaps = rows.filter((row) => {
    const asked = electricalOf(row);
    if (row.cells.rating !== undefined || asked.length === 0 || hasTypeNumber(row.description)) return false;
    if (row.mpn !== null && withNumber * 2 <= filled.length) return false;
    const words = [row.description, row.cells.value?.quote, row.package, row.note].join(' · ');
    if (asked.includes('power') && words.split(/[\s,;()·]+/u).some(isChipSize)) return false;
    return !asked.some((kind) => holdsQuantity(row, words, kind));
  });
  return { gaps: filled.length >= 5 && gaps.length * 4 <= filled.length ? gaps : [], filled: filled.length };
}

function isChipSize(word: string): boolean {
  return /^\d{4}$/u.test(word) && isPackage(word);
}

/** Volts, amperes or watts by which a shop asks for such a part. */
function electricalOf(row: Part): QuantityKind[] {
  const kind = partKind(row);
  const needs = kind === null ? [] : (kinds[kind]?.needs ?? []);
  return electrical.filter((quantity) => needs.some(({ quantities }) => quantities?.includes(quantity)));
}

function isLacking(part: Part, need: Need, kind: KindNeeds, build: Build, guide: string): boolean {
  const speaksElsewhere = need.inGuide === true || kind.plural === 'supplies';
  return speaksElsewhere ? isLackingIn(part, need, kind, build, guide) : isLackingInRow(kind)(need)(part);
}

const isLackingInRow = rememberFor((kind: KindNeeds) =>
  rememberFor((need: Need) => rememberFor((part: Part) => isLackingIn(part, need, kind, null, ''))),
);

function isLackingIn(part: Part, need: Need, kind: KindNeeds, build: Build | null, guide: string): boolean {
  if (part.mpn !== null || hasShopNumber(part) || (kind.fastener !== true && hasTypeNumber(part.description)))
    return false;
  const supply = kind.plural === 'supplies' ? ` · ${build?.settings.supply ?? ''}` : '';
  const own = kind.fastener === true ? rowWords(part).replace(sizeOfOther, ' ') : rowWords(part);
  const words = `${own}${supply}${need.inGuide === true ? ` · ${guide}` : ''}`;
  if (need.when !== undefined && !holdsWord(words, need.when)) return false;
  if (need.size === true && (part.package !== null || words.split(/[\s,;()·]+/u).some(isPackage))) return false;
  return !(
    holdsWord(words, need.words ?? []) ||
    holdsWord(rowWords(part), need.rowWords ?? []) ||
    (need.patterns ?? []).some((pattern) => new RegExp(pattern, 'iu').test(words)) ||
    (need.quantities ?? []).some((quantity) => holdsQuantity(part, words, quantity as QuantityKind))
  );
}

/** A size that the words around it give to another thing than the fastener: 'a 1.6 mm board', 'with 4 mm spacers'. */
const sizeOfOther =
  /\d+(?:[.,]\d+)?`?\s?mm`?[- ](?:thick\p{L}*|wide|walls?|boards?|PCBs?|plates?|panels?|acrylic|plywood|holes?|bore|drill|gap|deep|spacers?|stand-?offs?)\b/giu;

/** A number of a shop names one part, as long as the shop has it. */
function hasShopNumber({ supplier, cells }: Part): boolean {
  return cells.supplierNumber !== undefined || /\d{4,}/u.test(supplier ?? '');
}

function holdsWord(text: string, words: readonly string[]): boolean {
  if (words.length === 0) return false;
  const said = ` ${tokensOf(text).join(' ')} `;
  return words.some((word) => said.includes(` ${tokensOf(word).join(' ')} `));
}

/** Units as lists write them, closer to their number than running text would. */
const units: Partial<Record<QuantityKind, RegExp>> = {
  voltage: /\d\s?k?V(?:DC|AC|dc|ac)?\b/u,
  current: /\d\s?m?A\b/u,
  power: /\d\s?m?W\b/u,
};

function holdsQuantity(part: Part, words: string, kind: QuantityKind): boolean {
  const stated = [...part.ratings, ...(part.value.is === 'unknown' ? [] : part.value.claims.map(({ value }) => value))];
  return (
    stated.some((quantity) => quantity.kind === kind) ||
    (units[kind]?.test(words) ?? false) ||
    findQuantities(words).some(({ quantity }) => quantity.kind === kind)
  );
}

function sentence({ kind, what, rows, all }: Lacking): string {
  const [only] = rows;
  const lacks = `no ${listed(what, what.length).replace(/ and (?=[^,]*$)/u, ' or ')}`;
  if (all === 1 && only !== undefined) return `${rowName(only)} gives ${lacks}`;
  return `${rows.length} of ${all} ${kind.plural} ${rows.length === 1 ? 'gives' : 'give'} ${lacks}`;
}
