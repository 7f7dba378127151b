import type { Judged } from '#core/assembled.ts';
import type { Claim } from '#core/claim.ts';
import type { Endpoint } from '#core/connection.ts';
import type { Part } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import type { Measure, StepId } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { parseEndpoint } from '#notation/pins.ts';
import { powerPinOf } from '#notation/powerPin.ts';
import { findQuantities, formatQuantity } from '#notation/value.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { type Nets, netsOf } from '#rehearsal/nets.ts';
import { knownWires } from '../controllerEnds.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { type ReadingRange, readingRange } from '../readingRange.ts';
import { stepName } from '../say.ts';

export const readingDiffers = defineCheck({
  id: 'reading-differs',
  title: 'A reading to expect fits the step’s words, the name of the rail and the part that is measured.',
  weight: 'slows',
  audience: 'builder',
  why: 'With a wrong number to compare with, good work is taken for bad and taken apart.',
  basis:
    'common practice: a rail carries the voltage of its name, within 15 %; parallel paths only lower a resistance (Ohm’s law)',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const wires = knownWires(judged);
    const nets = netsOf(wires);
    const refs = new Set([
      ...judged.build.parts.flatMap((part) => part.refs),
      ...wires.flatMap(({ from, to }) => [from.ref, to.ref]),
    ]);
    const taken = new Set<string>();
    for (const { id } of judged.build.instructions.sections) {
      const step = judged.facts.steps[id];
      if (step === undefined) continue;
      for (const { value } of step.uses) if (value.ref !== null) taken.add(value.ref);
      const readings = step.measures.flatMap((claim) => readingOf(claim, refs) ?? []);
      for (const reading of readings) {
        yield* againstRail(judged, id, reading, nets);
        yield* againstPart(judged, id, reading, nets, taken);
      }
      yield* againstWords(judged, id, readings);
    }
  },
  examples: {
    passes: [
      {
        title: 'words, rail and resistor fit; a rail is read empty, and a lower reading through a second path',
        files: {
          'guide.md':
            '# Night light\n\n## Solder\n\n- Parts: U1, R1, R2, K1\n- Power: off\n\nSolder.\n\n## Check\n\n- Power: off\n- Measure: U1.5V – U1.GND > 1 kΩ\n- Measure: R1.1 – R1.2 5 kΩ ± 1 kΩ\n- Measure: K1.A1 – K1.COM > 20 MΩ\n\nProbe.\n\n## Switch on\n\n- Power: off → on\n- Measure: U1.5V – U1.GND 4.8 V ± 0.2 V\n- Measure: U1.3V3 – U1.GND 3.3 V ± 5 %\n\nRead about 5 V between U1.5V and U1.GND. The two differ by less than 2 V.\n\n## Switch off\n\n- Power: on → off\n- Measure: U1.5V – U1.GND < 0.1 V\n\nWait.\n',
          'parts.csv':
            'Reference,Quantity,Value,Description\nU1,1,,Controller board\nR1,1,10 kΩ,Resistor\nR2,1,10 kΩ,Resistor\nK1,1,,"Relay, coil 5 V 70 Ω"\n',
          'wiring.csv': 'from,to,net\nR1.1,U1.5V,5V\nR2.1,U1.5V,5V\nR1.2,U1.A0,SENSE\nR2.2,U1.A0,SENSE\n',
        },
      },
      {
        title: 'a resistor that comes later is not measured yet',
        files: {
          'guide.md':
            '# Night light\n\n## Check\n\n- Parts: U1\n- Power: off\n- Measure: U1.5V – U1.A0 > 1 MΩ\n\nProbe.\n\n## Solder\n\n- Parts: R1\n- Connects: R1.1 – U1.5V, R1.2 – U1.A0\n- Power: off\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\nU1,1,,Controller board\nR1,1,10 kΩ,Resistor\n',
          'wiring.csv': 'from,to,net\nR1.1,U1.5V,5V\nR1.2,U1.A0,SENSE\n',
        },
      },
    ],
    fails: [
      {
        title: 'the rail is named for another voltage, by its pin and by its net',
        files: {
          'guide.md':
            '# Night light\n\n## Switch on\n\n- Power: off → on\n- Measure: U1.3V3 – U1.GND 5 V ± 0.2 V\n- Measure: U2.OUT – U2.COM 10 V ± 0.2 V\n\nProbe.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Controller board\nU2,1,Boost module\n',
          'wiring.csv': 'from,to,net\nU2.OUT,U1.VIN,+5V\nU2.COM,U1.GND,GND\n',
        },
        expect: [
          { file: 'guide.md', line: 6, words: '3.3 V' },
          { file: 'guide.md', line: 7, words: '10 V' },
        ],
      },
      {
        title: 'the words of the step tell another reading',
        files: {
          'guide.md':
            '# Night light\n\n## Switch on\n\n- Power: off → on\n- Measure: U1.OUT – U1.GND 3.0 V ± 0.1 V\n\nRead about 5 V between the two.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Controller board\n',
        },
        expect: [{ file: 'guide.md', line: 8, words: '5 V' }],
      },
      {
        title: 'more than the resistor between the points has, and a coil of another resistance',
        files: {
          'guide.md':
            '# Night light\n\n## Solder\n\n- Parts: U1, R1, K1\n- Power: off\n- Measure: U1.5V – U1.A0 20 kΩ ± 1 kΩ\n- Measure: K1.A1 – K1.A2 140 Ω ± 10 Ω\n\nSolder, then probe.\n',
          'parts.csv':
            'Reference,Quantity,Value,Description\nU1,1,,Controller board\nR1,1,10 kΩ,Resistor\nK1,1,,"Relay, coil 5 V 70 Ω"\n',
          'wiring.csv': 'from,to,net\nR1.1,U1.5V,5V\nR1.2,U1.A0,SENSE\n',
        },
        expect: [
          { file: 'guide.md', line: 7, words: '10 kΩ' },
          { file: 'guide.md', line: 8, words: '70 Ω' },
        ],
      },
    ],
  },
});

interface Reading {
  readonly claim: Claim<Measure>;
  readonly range: ReadingRange;
  readonly ends: readonly Endpoint[];
}

function readingOf(claim: Claim<Measure>, refs: ReadonlySet<string>): Reading | null {
  const range = readingRange(claim.value.expect);
  if (range === null) return null;
  return { claim, range, ends: claim.value.between.flatMap((point) => parseEndpoint(point, refs) ?? []) };
}

/** From a rail of stated volts to ground. A reading near nothing is one of an empty rail. */
function* againstRail({ build }: Judged, step: StepId, reading: Reading, nets: Nets): Iterable<FindingDraft> {
  const { claim, range, ends } = reading;
  const [a, b] = ends;
  if (range.kind !== 'voltage' || a === undefined || b === undefined) return;
  const [first, second] = [railOf(a, nets), railOf(b, nets)];
  const rail = first?.is === 'rail' ? first : second?.is === 'rail' ? second : null;
  const other = rail === first ? second : first;
  if (rail === null || other?.is !== 'ground' || range.high < rail.volts / 5) return;
  if (range.high >= rail.volts * 0.85 && range.low <= rail.volts * 1.15) return;
  const volts = formatQuantity('voltage', rail.volts);
  yield {
    ...drafted(step, claim, claim.places),
    message: `The step ${stepName(build, step)} expects ${claim.value.expect} at ${claim.value.between.join(' – ')}; the name of the rail, ${rail.text}, says ${volts}.`,
    remedy: `Write the reading that you had; of a rail named ${rail.text} one expects about ${volts}.`,
  };
}

/** What the pin is called, else what its net is called. */
function railOf(end: Endpoint, nets: Nets): ReturnType<typeof powerPinOf> {
  const named = [end.pin, ...nets.namesAt(end)].flatMap((name) => powerPinOf(name.toUpperCase()) ?? []);
  return named.find(({ is }) => is === 'rail' || is === 'ground') ?? null;
}

/** More than a part between the two points has cannot be read there: other paths only lower it. */
function* againstPart(
  { build }: Judged,
  step: StepId,
  { claim, range, ends }: Reading,
  nets: Nets,
  taken: ReadonlySet<string>,
): Iterable<FindingDraft> {
  const [a, b] = ends;
  if (range.kind !== 'resistance' || a === undefined || b === undefined) return;
  for (const part of build.parts) {
    const ohms = ohmsOf(part);
    const ref = part.refs.find((one) => taken.has(one) && liesBetween(one, a, b, nets));
    if (ohms === null || ref === undefined || range.low <= ohms * 1.1) continue;
    const stated = formatQuantity('resistance', ohms);
    yield {
      ...drafted(step, claim, [...claim.places, part.cells.value ?? part.cells.description ?? part.place]),
      message: `The step ${stepName(build, step)} expects ${claim.value.expect} at ${claim.value.between.join(' – ')}; ${ref} lies there with ${stated}, so no more can be read.`,
      remedy: `Write what you read, or correct the value of ${ref} in the list.`,
    };
    return;
  }
}

/** The resistance of a resistor, or the one that a coil or motor is described with. What light or heat changes has none. */
function ohmsOf(part: Part): number | null {
  const { value, description } = part;
  if (/\b(?:light|LDR|photo\w*|thermistor|NTC|PTC|potentiometer|trimmer|variable)\b/iu.test(description)) return null;
  const listed = value.is === 'unknown' ? undefined : value.claims[0]?.value;
  if (listed !== undefined) return listed.kind === 'resistance' && listed.si > 0 ? listed.si : null;
  const stated = findQuantities(description).filter(({ quantity }) => quantity.kind === 'resistance');
  const only = stated.length === 1 ? stated[0]?.quantity.si : undefined;
  return only !== undefined && /\b(?:resistor|coil|winding)\b/iu.test(description) ? only : null;
}

/** IEC 60947-1 names the terminals of a coil A1 and A2; those of its contacts have no resistance to tell. */
const coilPin = /^(?:A[12]|COIL\w*)$/iu;

function liesBetween(ref: string, a: Endpoint, b: Endpoint, nets: Nets): boolean {
  if (a.ref === ref && b.ref === ref) {
    return a.pin !== b.pin && (/^R\d/.test(ref) || [a, b].every(({ pin }) => coilPin.test(pin)));
  }
  const legs = ['1', '2'].map((pin) => ({ ref, pin }));
  const [one, two] = legs;
  if (one === undefined || two === undefined || !/^R\d/.test(ref)) return false;
  return (nets.joined(a, one) && nets.joined(b, two)) || (nets.joined(a, two) && nets.joined(b, one));
}

const readsRightBefore =
  /\bread(?:s|ing)?\s+(?:(?:of|is|about|roughly|around|nearly|approximately|close to)\s+|[≈~+]\s?)*$/iu;

/** 'Read about 5 V' in the step, where none of its readings of that kind allows 5 V. */
function* againstWords({ build, facts }: Judged, step: StepId, readings: readonly Reading[]): Iterable<FindingDraft> {
  if (readings.length === 0) return;
  for (const { words, place } of spokenTexts(build).filter((text) => text.step === step)) {
    for (const { text, start } of sentencesOf(words)) {
      for (const found of findQuantities(text)) {
        if (!readsRightBefore.test(text.slice(0, found.start))) continue;
        const { kind, si } = found.quantity;
        const at = placeInside(place, start + found.start, start + found.end);
        const named = facts.pins.filter(({ places }) => places.some((one) => isWithin(one, place, start, text.length)));
        const meant = readings.filter(
          ({ range, ends }) =>
            range.kind === kind &&
            (named.length === 0 ||
              named.every(({ value }) => ends.some(({ ref, pin }) => ref === value.end.ref && pin === value.end.pin))),
        );
        const [first] = meant;
        const slack = Math.abs(si) * 0.05;
        if (first === undefined || meant.some(({ range: { low, high } }) => low - slack <= si && si <= high + slack))
          continue;
        yield {
          ...drafted(step, first.claim, [...meant.flatMap(({ claim }) => claim.places), at]),
          message: `The step ${stepName(build, step)} expects ${first.claim.value.expect} at ${first.claim.value.between.join(' – ')}; its words say to read ${found.quantity.text.trim()}.`,
          remedy: 'Write the reading that you had in both places.',
        };
      }
    }
  }
}

function isWithin(one: Place, text: Place, start: number, length: number): boolean {
  if (one.kind !== 'text' || text.kind !== 'text' || one.file !== text.file) return false;
  const from = text.span[0] + start;
  return one.span[0] >= from && one.span[1] <= from + length;
}

function drafted(
  step: StepId,
  { value }: Claim<Measure>,
  sides: readonly Place[],
): Pick<FindingDraft, 'subjects' | 'mark' | 'sides' | 'consequence'> {
  return {
    subjects: [`step:${step}`],
    mark: slugOf(value.text),
    sides: [...sides],
    consequence: 'A builder takes good work for bad, or bad work for good.',
  };
}
