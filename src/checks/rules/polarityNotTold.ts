import type { ActionKind } from '#core/action.ts';
import type { Judged } from '#core/assembled.ts';
import type { Part, Ref } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { refClass } from '#notation/refs.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck } from '../defineCheck.ts';
import words from '../knowledge/orientationWords.json';
import { proseOf } from '../proseOf.ts';
import { listed, stepName } from '../say.ts';

export const polarityNotTold = defineCheck({
  id: 'polarity-not-told',
  title: 'A step that fits a part with a right and a wrong way round says which it is.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A reversed electrolytic capacitor bursts, a reversed chip dies, a reversed LED stays dark.',
  basis: 'common practice; marks of polarity as in IEC 60384-4 (capacitors), IEC 60617 (diodes) and on packages',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run(judged) {
    const { build, facts } = judged;
    for (const section of build.instructions.sections) {
      const step = facts.steps[section.id];
      if (section.role !== 'step' || step === undefined || !isFitted(judged, section)) continue;
      if (tells(wordsOf(judged, section))) continue;
      const open = new Map<string, Place[]>();
      for (const { part, ref, places } of partsFitted(judged, section)) {
        if (!hasWayRound(part) || isToldElsewhere(judged, part, ref === null ? part.refs : [ref])) continue;
        open.set(ref ?? part.refs[0] ?? part.description, [...places]);
      }
      if (open.size === 0) continue;
      const basis = step.uses.some(({ basis: one }) => one === 'declared') ? 'declared' : 'read';
      yield {
        subjects: [`step:${section.id}`],
        sides: [...open.values()].flat().slice(0, 5),
        basis,
        message: `The step ${stepName(build, section.id)} fits ${listed([...open.keys()])}, and no word of it tells the way round.`,
        consequence: 'A builder fits it as it comes; half of them fit it reversed, and some parts die of that.',
        remedy: 'Say by which mark to turn it: the stripe, the longer lead, the notch, the flat side, pin 1.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the mark is named, for one part in the step, for another in a table',
        files: {
          'guide.md':
            '# Night light\n\n| part | way round |\n| --- | --- |\n| D2 | stripe to the left |\n\n## Fit the lamp\n\n- Parts: D1\n\nSolder the longer lead to the upper hole.\n\n## Fit the diode\n\n- Parts: D2\n\nSolder D2.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nD2,1,Diode 1N4007\n',
        },
      },
      {
        title: 'the wiring names the pins',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n\nSolder the wires.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to\nR1.2,D1.A\nD1.K,BT1.-\n',
        },
      },
      {
        title: 'parts without a way round, and one that is only laid out',
        files: {
          'guide.md':
            '# Night light\n\n## Lay out the parts\n\n- Parts: D1\n\nLook for D1 in the bag.\n\n## Fit the rest\n\n- Parts: R1, C1, X1\n\nSolder all three.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nC1,1,Ceramic capacitor 100 nF\nX1,1,Header socket for the display\n',
        },
      },
    ],
    fails: [
      {
        title: 'an LED and a capacitor, soldered somehow',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, C1, R1\n\nSolder D1, C1 and R1 to the board.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nC1,1,Electrolytic capacitor 100 µF\nR1,1,Resistor 150 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'D1 and C1' }],
      },
      {
        title: 'numbers of its legs say nothing to somebody who holds a diode',
        files: {
          'guide.md': '# Night light\n\n## Fit the diode\n\n- Parts: D1\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,Diode 1N4007\nR1,1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to\nR1.2,D1.1\nD1.2,R1.1\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'D1' }],
      },
      {
        title: 'named in a sentence alone',
        files: {
          'guide.md': '# Night light\n\n## Solder the driver\n\nSolder Q1 and R1 beside the buzzer.\n',
          'parts.csv': 'Reference,Quantity,Description\nQ1,1,Transistor BC547\nR1,1,Resistor 1 kΩ\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'Q1' }],
      },
      {
        title: 'a chip pressed into its socket',
        files: {
          'guide.md': '# Night light\n\n## Fit the chip\n\n- Parts: U1\n\nPress U1 into its socket.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,Quad buffer 74HCT125 DIP-14\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'U1' }],
      },
    ],
  },
});

const told = new RegExp(`(?<![\\p{L}\\d])(?:${words.told.join('|')})(?![\\p{L}\\d])`, 'iu');
const signs = new RegExp(words.signs, 'u');
const partWords = new RegExp(words.parts.join('|'), 'i');
/** Work that puts a part in place. */
const fits: readonly ActionKind[] = ['solder', 'fit', 'plug-in', 'glue'];
const otherParts = new RegExp(`\\b(?:${words.not.join('|')})\\b`, 'i');

/** Whether the step has the builder put parts in place, rather than sort or test them. */
function isFitted({ facts }: Judged, { id }: Section): boolean {
  return facts.actions.some(({ step, told: how, kind }) => step === id && how === 'do' && fits.includes(kind));
}

interface FittedPart {
  readonly part: Part;
  readonly ref: Ref | null;
  readonly places: readonly Place[];
}

/** Parts that the step declares; where it declares none, those that its sentences name together with the work. */
function partsFitted({ build, facts }: Judged, { id }: Section): FittedPart[] {
  const uses = facts.steps[id]?.uses ?? [];
  if (uses.length > 0) {
    return uses.flatMap(({ value, places }) => {
      const part = build.parts.find((one) => one.id === value.part);
      return part === undefined ? [] : [{ part, ref: value.ref, places }];
    });
  }
  const work = facts.actions.filter(({ step, told: how, kind }) => step === id && how === 'do' && fits.includes(kind));
  return spokenTexts(build)
    .filter(({ step }) => step === id)
    .flatMap((spoken) =>
      sentencesOf(spoken.words).flatMap(({ text, start }) => {
        const from = spoken.place.span[0] + start;
        const isWork = work.some(({ place }) => place.span[0] >= from && place.span[1] <= from + text.length);
        if (!isWork) return [];
        return [...text.matchAll(/(?<![\p{L}\d.])[A-Z]{1,4}\d{1,3}(?![\p{L}\d]|\.\S)/gu)].flatMap((match) => {
          const part = build.parts.find(({ refs }) => refs.includes(match[0]));
          const at = start + match.index;
          const place = placeInside(spoken.place, at, at + match[0].length);
          return part === undefined ? [] : [{ part, ref: match[0], places: [place] }];
        });
      }),
    );
}

function hasWayRound(part: Part): boolean {
  if (otherParts.test(part.description)) return false;
  const kind = part.refs[0] === undefined ? null : refClass(part.refs[0]);
  return (kind !== null && words.classes.includes(kind)) || partWords.test(part.description);
}

/** What a builder reads in the step: its words, its facts, and what its pictures show. */
function wordsOf({ build }: Judged, section: Section): string {
  const source = build.texts.get(section.file)?.text ?? '';
  const next = build.instructions.sections.find(
    ({ file, place }) => file === section.file && place.span[0] > section.place.span[0],
  );
  return source.slice(section.place.span[0], next?.place.span[0]);
}

function tells(text: string): boolean {
  return told.test(text) || signs.test(text);
}

/** A wire that goes to a named pin tells the way round; so does a line of the guide that speaks of part and mark. */
function isToldElsewhere({ build, facts }: Judged, part: Part, refs: readonly Ref[]): boolean {
  const joins = Object.values(facts.steps).flatMap(({ connects }) => connects.map(({ value }) => value));
  const ends = [...build.connections, ...joins].flatMap(({ from, to }) => [from, to]);
  const isNumbered = refs.some((ref) => refClass(ref) === 'ic');
  if (ends.some(({ ref, pin }) => refs.includes(ref) && (isNumbered || !/^\d+$/.test(pin)))) return true;
  const names = [...refs, part.description].map((name) => name.toLowerCase());
  const lines = proseOf(build).flatMap(({ text }) => text.split(/[\r\n]+/));
  return lines.some((line) => told.test(line) && names.some((name) => holds(line.toLowerCase(), name)));
}

function holds(line: string, name: string): boolean {
  const at = line.indexOf(name);
  return at >= 0 && !/[\p{L}\d]/u.test(line[at - 1] ?? ' ') && !/[\p{L}\d]/u.test(line[at + name.length] ?? ' ');
}
