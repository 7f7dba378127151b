import type { ActionKind } from '#core/action.ts';
import type { Judged } from '#core/assembled.ts';
import type { Part, Ref } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { Section, StepId } from '#core/step.ts';
import { refClass } from '#notation/refs.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { spokenRows, spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { actionsOfStep } from '#rehearsal/actionsOfStep.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
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
    const known = new Set<string>();
    for (const section of build.instructions.sections) {
      const step = facts.steps[section.id];
      if (section.role !== 'step' || step === undefined || !isFitted(judged, section)) continue;
      const open = new Map<string, Place[]>();
      const untold = tells(wordsOf(judged, section)) ? [] : partsFitted(judged, section);
      for (const { part, ref, places } of untold) {
        if (!hasWayRound(part) || isToldElsewhere(judged, part, ref === null ? part.refs : [ref])) continue;
        const name = ref ?? part.refs[0] ?? part.description;
        open.set(name, [...places]);
        known.add(name);
      }
      yield* markNotTold(judged, section, known);
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
        title: 'the wiring names the pins, and the list what they look like',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n\nSolder the wires.\n',
          'parts.csv':
            'Reference,Quantity,Description,Note\nD1,1,White LED 5 mm,The longer lead is A\nR1,1,Resistor 150 Ω,\n',
          'wiring.csv': 'from,to\nR1.2,D1.A\nD1.K,BT1.-\n',
        },
      },
      {
        title: 'a mark in the list, in the next sentence, and on a board that carries lamps',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamps\n\n- Parts: D1, D2, D3, Q1\n\nPush Q1 in with its flat side towards D1. Push D1 in. Its longer lead goes to the right. Push D2 in. Solder D3 to the names.\n',
          'parts.csv':
            'Reference,Quantity,Description,Note\nD1,1,White LED 5 mm,\nD2,1,Diode 1N4007,Ring marks the cathode\nD3,1,Module with three LEDs,\nQ1,1,Transistor BC547,\n',
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
        title: 'the wiring names the pins of a lamp, nothing what they look like',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1\n\nSolder the wires.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\n',
          'wiring.csv': 'from,to\nR1.2,D1.A\nD1.K,BT1.-\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'shows its way round' }],
      },
      {
        title: 'the way round of another part is told, the lamp goes by the names of its pins',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, Q1, R1\n\nPush Q1 in with its flat side towards R1. Push D1 in. Solder D1.A to R1.2.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nQ1,1,Transistor BC547\nR1,1,Resistor 150 Ω\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'shows its way round' }],
      },
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

/**
 * LEDs and diodes that go by the names of their pins, or whose step tells the way round of other parts only: a name
 * is nothing that can be seen on the part.
 */
function* markNotTold(judged: Judged, section: Section, known: Set<string>): Iterable<FindingDraft> {
  const open = new Map<string, Place[]>();
  for (const { part, ref, places } of partsFitted(judged, section)) {
    const name = ref ?? part.refs[0] ?? part.description;
    if (known.has(name) || !isLampOrDiode(part)) continue;
    known.add(name);
    if (!isMarkTold(judged, section.id, part, ref === null ? part.refs : [ref])) open.set(name, [...places]);
  }
  if (open.size === 0) return;
  yield {
    subjects: [`step:${section.id}`],
    mark: 'no-mark',
    weight: 'tidy',
    sides: [...open.values()].flat().slice(0, 5),
    message: `Nothing in the guide or the lists tells by what ${listed([...open.keys()])} in ${stepName(judged.build, section.id)} shows its way round.`,
    consequence: 'A builder who sees two leads does not know which is the anode, and tries.',
    remedy: 'Name what can be seen: the longer lead, the flat side, the ring.',
  };
}

const told = new RegExp(`(?<![\\p{L}\\d])(?:${words.told.join('|')})(?![\\p{L}\\d])`, 'iu');
const signs = new RegExp(words.signs, 'u');
const marks = new RegExp(`(?<![\\p{L}\\d])(?:${words.marks.join('|')})(?![\\p{L}\\d])`, 'iu');
const anyRef = /\b[A-Z]{1,4}\d{1,3}\b/;
const lampOrDiode = /\b(?:leds?|diodes?)\b/i;
const modules = new RegExp(`\\b(?:${words.modules.join('|')})\\b`, 'i');
const partWords = new RegExp(words.parts.join('|'), 'i');
/** Work that puts a part in place. */
const fits: readonly ActionKind[] = ['solder', 'fit', 'plug-in', 'glue'];
const otherParts = new RegExp(`\\b(?:${words.not.join('|')})\\b`, 'i');

/** Whether the step has the builder put parts in place, rather than sort or test them. */
function isFitted({ facts }: Judged, { id }: Section): boolean {
  return actionsOfStep(facts, id).some(({ told: how, kind }) => how === 'do' && fits.includes(kind));
}

/** The first row of each name. */
const partsById = rememberFor((parts: readonly Part[]) => new Map(parts.toReversed().map((part) => [part.id, part])));

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
      const part = value.part === null ? undefined : partsById(build.parts).get(value.part);
      return part === undefined ? [] : [{ part, ref: value.ref, places }];
    });
  }
  const work = actionsOfStep(facts, id).filter(({ told: how, kind }) => how === 'do' && fits.includes(kind));
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

function isLampOrDiode(part: Part): boolean {
  // A lamp that comes with its holder is still a lamp.
  if (otherParts.test(part.description.split(/\bwith\b/i)[0] ?? '') || modules.test(part.description)) return false;
  const kind = part.refs[0] === undefined ? null : refClass(part.refs[0]);
  return kind === 'led' || kind === 'diode' || lampOrDiode.test(part.description);
}

/** Whether a row of the lists, a fact or a sentence of the guide names the part, or its kind, with a mark on it. */
function isMarkTold({ build }: Judged, step: StepId, part: Part, refs: readonly Ref[]): boolean {
  const rows = [`${part.description}. ${part.note ?? ''}. ${part.package ?? ''}`];
  const joints = build.connections
    .filter(({ from, to }) => refs.includes(from.ref) || refs.includes(to.ref))
    .map(({ note }) => note ?? '');
  if ([...rows, ...joints].some((words) => marks.test(words))) return true;
  const own = spokenTexts(build).filter((spoken) => spoken.step === step);
  if (own.some(({ words }) => sentencesOf(words).some(({ text }) => marks.test(text) && !anyRef.test(text))))
    return true;
  const facts = build.instructions.sections.flatMap((section) => section.facts.map(({ value }) => value));
  const table = spokenRows(build).map(({ cells }) => cells.map(({ words }) => words).join('. '));
  const prose = spokenTexts(build).flatMap(({ words }) => sentencesWithPronouns(words));
  const names = [...refs.map((ref) => ref.toLowerCase()), part.description.toLowerCase()];
  return [...facts, ...table, ...prose].some(
    (words) => marks.test(words) && (lampOrDiode.test(words) || names.some((name) => holds(words.toLowerCase(), name))),
  );
}

/** Each sentence, behind the one before it where it names no part of its own: 'Push D1 in. Its ring faces up.' */
function sentencesWithPronouns(words: string): string[] {
  const sentences = sentencesOf(words).map(({ text }) => text);
  return sentences.map((text, at) => (anyRef.test(text) ? text : `${sentences[at - 1] ?? ''} ${text}`));
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
