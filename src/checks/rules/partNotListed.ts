import type { Judged } from '#core/assembled.ts';
import { type Endpoint, endpointId } from '#core/connection.ts';
import type { Key } from '#core/key.ts';
import type { Place } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import { parseItem } from '#notation/items.ts';
import { slugOf, tokensOf } from '#notation/names.ts';
import { isRef } from '#notation/refs.ts';
import { type CannotTell, defineCheck, type FindingDraft } from '../defineCheck.ts';
import { partsFileName, partsFiles, stepName } from '../say.ts';

export const partNotListed = defineCheck({
  id: 'part-not-listed',
  title: 'Every part that steps or wiring use stands in the parts list.',
  weight: 'halts',
  audience: 'builder',
  why: 'Screws, headers, wire and late additions to the circuit are what parts lists forget most often.',
  basis: 'common practice: references of the wiring and of the steps, less those of the list',
  needs: { subject: ['uses or wires'], witnesses: ['parts'] },
  rehearsal: true,
  *run(judged) {
    yield* fromSteps(judged);
    yield* fromWires(judged);
  },
  examples: {
    passes: [
      {
        title: 'everything is listed, ranges and all',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistors\n\n- Parts: R1–R3\n\nThey stand upright.\n\n## Fit the lamps\n\n- Parts: D1, D2, D3\n\nMind the flat side.\n',
          'parts.csv': 'Reference,Quantity,Description\n"R1, R2, R3",3,Resistor 150 Ω\nD1–D3,3,White LED 5 mm\n',
          'wiring.csv': 'from,to,net\nR1.2,D1.A,LAMP1\nR2.2,D2.A,LAMP2\nR3.2,D3.A,LAMP3\n',
        },
      },
      {
        title: 'what an earlier step made needs no row',
        files: {
          'guide.md':
            '# Night light\n\n## Build the lamp head\n\n- Parts: D1, R1\n- Makes: lamp head\n\nSolder R1 to the long leg.\n\n## Mount the lamp head\n\n- Parts: lamp head, M3 screw × 2\n\nScrew it down.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n,2,M3 screw 8 mm\n',
        },
      },
      {
        title: 'a wiring that speaks of the ring and of the supply by their names',
        files: {
          'guide.md': '# Night light\n\n## Wire the ring\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nR1,1,Resistor 330 Ω\n,1,LED ring 16 pixels\n',
          'wiring.csv': 'from,to,net\nU1.IO5,RING.IN,DATA\nRING.GND,GND.1,GND\nU1.5V,USB.5V,5V\n',
        },
      },
      {
        title: 'a name that may mean either of two rows, and one with its length',
        files: {
          'guide.md': '# Night light\n\n## Close the case\n\n- Parts: M3 screw × 4, wire 30 cm\n\nScrew it shut.\n',
          'parts.csv': 'Quantity,Description\n2,M3 screw 8 mm\n2,M3 screw 20 mm\n1 m,Wire\n',
        },
      },
      {
        title: 'a list without references cannot be held against the wiring',
        outcome: 'cannot-tell',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder the LED to the board.\n',
          'parts.csv': 'Quantity,Description\n1,White LED 5 mm\n1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to,net\nR1.2,D1.A,LAMP\n',
        },
      },
    ],
    fails: [
      {
        title: 'a step takes a resistor that nobody bought',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n\nSolder both.\n\n## Fit the button\n\n- Parts: SW1, R5\n\nR5 holds the line high.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nSW1,1,Push button 6 mm\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'R5' }],
      },
      {
        title: 'the wiring knows a part that the list does not',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n\nSolder both.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to,net\nR1.2,D1.A,LAMP\nR1.1,F1.2,5V\nD1.K,TP1.1,GND\n',
        },
        expect: [{ file: 'wiring.csv', line: 3, words: 'F1' }],
      },
      {
        title: 'screws that only the step knows of',
        files: {
          'guide.md': '# Night light\n\n## Close the case\n\n- Parts: lid, M3 screw × 4\n\nScrew it shut.\n',
          'parts.csv': 'Reference,Quantity,Description\n,1,Lid\n,1,Case bottom\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'M3 screw' }],
      },
    ],
  },
});

function* fromSteps({ build, ledger }: Judged): Iterable<FindingDraft> {
  const byName = new Map<string, { named: string; places: Place[]; step: string }>();
  for (const stop of ledger.stops) {
    if (stop.kind !== 'part-not-listed' || stop.step === null) continue;
    // A list without references cannot lack one.
    if (stop.use.ref !== null && !build.parts.some(({ refs }) => refs.length > 0)) continue;
    const named = stop.use.ref ?? parseItem(stop.use.named).name;
    const entry = byName.get(slugOf(named)) ?? { named, places: [], step: stepName(build, stop.step) };
    entry.places.push(...(stop.claim?.places ?? []));
    byName.set(slugOf(named), entry);
  }
  for (const { named, places, step } of byName.values()) {
    yield {
      subjects: [partKey(named)],
      sides: [...places, ...partsFiles(build)],
      message: `The step ${step} takes ${named}; ${partsFileName(build)} holds no such part, and no step makes one.`,
      consequence: 'A builder who has bought what is listed cannot go on here.',
      remedy: `Add a row for ${named} to ${partsFileName(build)}, or take it out of the step.`,
    };
  }
}

/** Ends of wires that are no parts: test pads, fiducials, net ties, solder bridges, holes; and the supply's own names. */
const noParts = /^(?:TP|FID|NT|SB|MH)\d*$/;
const supplyNames = /^(?:A|D|P)?GND$|^EARTH$|^MAINS$|^USB$|^V(?:CC|DD|SS|IN|BUS|BAT|OUT)$|^[+-]?\d+V\d*$/i;

function* fromWires({ build, facts, ledger }: Judged): Iterable<FindingDraft | CannotTell> {
  const told = new Set(
    ledger.stops.flatMap((stop) =>
      stop.kind === 'part-not-listed' ? [(stop.use.ref ?? stop.use.named).toUpperCase()] : [],
    ),
  );
  const unlisted = new Map<string, { end: Endpoint; places: Place[] }>();
  const ends = [
    ...build.connections.flatMap(({ from, to, cells, place }) => [
      { end: from, place: cells.from ?? place },
      { end: to, place: cells.to ?? place },
    ]),
    ...Object.values(facts.steps).flatMap(({ connects }) =>
      connects.flatMap(({ value, basis, places }) =>
        basis === 'declared' ? [value.from, value.to].map((end) => ({ end, place: places[0] })) : [],
      ),
    ),
  ];
  for (const { end, place } of ends) {
    const ref = end.ref.toUpperCase();
    if (told.has(ref) || isListed(ref, build.parts) || isNoPart(ref)) continue;
    const entry = unlisted.get(ref) ?? { end, places: [] };
    if (place !== undefined) entry.places.push(place);
    unlisted.set(ref, entry);
  }
  const hasRefs = build.parts.some(({ refs }) => refs.length > 0);
  if (!hasRefs && unlisted.size > 0) {
    yield { cannotTell: 'the parts list gives no references to hold the wiring against' };
    return;
  }
  for (const [ref, { end, places }] of unlisted) {
    yield {
      subjects: [partKey(ref)],
      sides: [...places, ...partsFiles(build)],
      weight: isRef(ref) ? 'halts' : 'slows',
      message: `${endpointId(end)} is wired; ${partsFileName(build)} holds no ${ref}.`,
      consequence: 'A builder who has bought what is listed has nothing to wire there.',
      remedy: `Add a row for ${ref} to ${partsFileName(build)}, or correct the reference in the wiring.`,
    };
  }
}

/** References and ids of the list. */
const namesOf = rememberFor(
  (parts: Judged['build']['parts']) => new Set(parts.flatMap(({ id, refs }) => [id.toUpperCase(), ...refs])),
);

/** By reference or id; a word such as RING also by the words of a description. */
function isListed(ref: string, parts: Judged['build']['parts']): boolean {
  if (namesOf(parts).has(ref)) return true;
  if (isRef(ref)) return false;
  const words = tokensOf(ref);
  return parts.some(({ description, mpn, note }) => {
    const said = new Set(tokensOf(`${description} ${mpn ?? ''} ${note ?? ''}`));
    return words.length > 0 && words.every((word) => said.has(word));
  });
}

function isNoPart(ref: string): boolean {
  return supplyNames.test(ref) || noParts.test(ref);
}

function partKey(named: string): Key {
  return isRef(named) ? `part:${named.toUpperCase()}` : `part:${slugOf(named)}`;
}
