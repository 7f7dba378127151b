import type { Judged } from '#core/assembled.ts';
import type { Part } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { unitOfPart } from '#rehearsal/amounts.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { counted, listed, partsFileName, stepName } from '../say.ts';

export const partCountDiffers = defineCheck({
  id: 'part-count-differs',
  title: 'Quantities, references and what the steps take agree.',
  weight: 'halts',
  audience: 'builder',
  why: 'A builder orders by the quantity column; one piece too few means waiting for another parcel.',
  basis: 'common practice: quantity = count of references = sum over the steps',
  needs: { subject: ['parts'], witnesses: [] },
  rehearsal: true,
  *run(judged) {
    for (const part of judged.build.parts) yield* withinTheList(part);
    yield* usedUp(judged);
    yield* leftOver(judged);
  },
  examples: {
    passes: [
      {
        title: 'as many as there are references, and the steps take them all',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistors\n\n- Parts: R1–R3\n\nUpright.\n\n## Close the case\n\n- Parts: M3 screw × 4, lid\n\nDone.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1-R3,3,Resistor 150 Ω\n,4,M3 screw\n,1,Lid\n',
        },
      },
      {
        title: 'a part that is named again in a later step is not taken twice',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, case\n\nSolder it.\n\n## Close the case\n\n- Parts: D1, case\n\nBend D1 to the hole.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n,1,Case\n',
        },
      },
      {
        title: 'spares, unfitted places and lengths to be cut',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamps\n\n- Parts: D1, D2, wire 30 cm\n\nSolder them.\n\n## Lead out\n\n- Parts: wire 200 mm\n\nTie a knot.\n',
          'parts.csv':
            'Reference,Quantity,Description,Note,DNP\n"D1, D2",3,White LED 5 mm,one spare,\n,60 cm,Wire,,\n"R8, R9",0,Resistor,,DNP\n',
        },
      },
    ],
    fails: [
      {
        title: 'two bought for three places',
        files: {
          'guide.md': '# Night light\n\n## Fit the resistors\n\nUpright.\n',
          'parts.csv': 'Reference,Quantity,Description\n"R1, R2, R3",2,Resistor 150 Ω\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '2' }],
      },
      {
        title: 'the steps take six screws of four',
        files: {
          'guide.md':
            '# Night light\n\n## Fix the board\n\n- Parts: M3 screw × 4, board\n\nTight.\n\n## Close the case\n\n- Parts: M3 screw × 2, lid\n\nDone.\n',
          'parts.csv': 'Reference,Quantity,Description\n,4,M3 screw\n,1,Lid\n,1,Board\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'M3 screw' }],
      },
      {
        title: 'a resistor that no step ever fits',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n\nSolder both.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nR2,1,Resistor 10 kΩ\n',
        },
        expect: [{ file: 'parts.csv', line: 4, words: 'R2' }],
      },
    ],
  },
});

/** The quantity column against the count of references. More than that may be spares; fewer never work out. */
function* withinTheList(part: Part): Iterable<FindingDraft> {
  const listedAs = part.amount.is === 'contradicted' ? part.amount.claims[0].value : null;
  if (!part.fitted || listedAs === null || listedAs.approximate || listedAs.unit !== 'pcs' || part.refs.length === 0)
    return;
  const { n } = listedAs;
  const places = part.refs.length;
  if (n === places || (n > places && isMeantSo(part))) return;
  yield {
    subjects: [`part:${part.id}`],
    mark: 'quantity',
    sides: cellsOf(part),
    weight: n < places ? 'halts' : 'slows',
    message: `The quantity says ${n}; the references name ${places}: ${listed(part.refs)}.`,
    consequence:
      n < places
        ? `A builder buys ${n} and is ${places - n} short.`
        : `A builder buys ${n} and wonders where the other ${n - places} belong.`,
    remedy:
      n < places
        ? `Write ${places} into the quantity, or take out the references that are no longer there.`
        : `Write ${places} into the quantity, add the missing references, or note that the rest are spares.`,
  };
}

function* usedUp({ build, ledger, facts }: Judged): Iterable<FindingDraft> {
  const seen = new Set<string>();
  for (const stop of ledger.stops) {
    if (stop.kind !== 'part-used-up' || stop.step === null || seen.has(stop.part)) continue;
    seen.add(stop.part);
    const part = build.parts.find(({ id }) => id === stop.part);
    const unit = unitOfPart(part);
    const uses = Object.values(facts.steps).flatMap(({ uses }) => uses.filter(({ value }) => value.part === stop.part));
    yield {
      subjects: [`part:${stop.part}`],
      mark: 'used-up',
      sides: [
        ...(stop.claim?.places ?? []),
        ...(part === undefined ? [] : cellsOf(part)),
        ...uses.flatMap(({ places }) => places),
      ],
      message: `The step ${stepName(build, stop.step)} takes ${counted(stop.wanted, unit)} of ${stop.use.named}; ${
        stop.had === 0 ? 'none is' : `${counted(stop.had, unit)} ${stop.had === 1 ? 'is' : 'are'}`
      } left of those in ${partsFileName(build)}.`,
      consequence: 'A builder who has bought what is listed runs out here.',
      remedy: 'Raise the quantity in the parts list to what all steps take together, or correct the step.',
    };
  }
}

function* leftOver({ build, ledger }: Judged): Iterable<FindingDraft> {
  for (const stop of ledger.stops) {
    if (stop.kind !== 'part-left-over') continue;
    const part = build.parts.find(({ id }) => id === stop.part);
    if (part === undefined || isMeantSo(part)) continue;
    const name = part.refs.length > 0 ? listed(part.refs) : part.description;
    yield {
      subjects: [`part:${part.id}`],
      mark: 'left-over',
      sides: cellsOf(part),
      weight: 'slows',
      message:
        stop.left === stop.listed
          ? `No step takes ${name}; the list holds ${counted(stop.listed, unitOfPart(part))}.`
          : `The steps leave ${counted(stop.left, unitOfPart(part))} of ${counted(stop.listed, unitOfPart(part))} of ${name} unused.`,
      consequence: 'A builder ends with parts on the bench and cannot tell what was left out.',
      remedy: 'Name the part in the step that fits it, lower the quantity, or note that it is a spare.',
    };
  }
}

/** The cells that count: quantity and references, else the row. */
function cellsOf(part: Part): Place[] {
  const cells = [part.cells.quantity, part.cells.reference].filter((cell) => cell !== undefined);
  return cells.length > 0 ? cells : [part.place];
}

/** More than is fitted is meant so where the list speaks of spares or packs. */
function isMeantSo(part: Part): boolean {
  const words = [part.description, part.note ?? '', part.section ?? '', ...Object.values(part.other)].join(' ');
  return /\b(?:spares?|extras?|packs?|kits?|pairs?|strips?|assorted|assortment|sold|minimum order|optional|consumables?)\b/i.test(
    words,
  );
}
