import type { Judged } from '#core/assembled.ts';
import type { Part, Ref } from '#core/part.ts';
import type { Place } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { knownThings } from '#prose/knownThings.ts';
import { refGroups } from '#prose/mentions/refGroups.ts';
import { type Saying, stepTalk } from '#prose/proposals/stepTalk.ts';
import { addToFact } from '../addToFact.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { listed, numbered, stepName } from '../say.ts';

export const partNotTakenUp = defineCheck({
  id: 'part-not-taken-up',
  title: 'A part that steps join or work on is among the parts of one of them.',
  weight: 'slows',
  audience: 'builder',
  why: 'Builders lay out the parts of a step before it starts; what is on no such list stays in its bag.',
  basis: 'common practice: the parts of all steps together are the parts list',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run(judged) {
    const { build } = judged;
    const forgotten = forgottenRefs(judged);
    if (forgotten.length === 0) return;
    const sightings = sightingsOf(judged, new Set(forgotten.map(({ ref }) => ref)));
    for (const section of build.instructions.sections) {
      const here = forgotten.flatMap(({ ref, part }) => {
        const seen = sightings.get(ref) ?? [];
        const first = seen.find((one) => listsParts(one.section)) ?? seen[0];
        return first?.section === section ? [{ ref, part, first, seen }] : [];
      });
      if (here.length > 0) yield draftOf(judged, section, here);
    }
  },
  examples: {
    passes: [
      {
        title: 'each part is taken up once, here or in a later step; a range takes all of its parts',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: R1–R4\n- Connects: D1.A – R1.2\n\nSolder R2 beside R3. Leave room for D1.\n\n## Fit the light\n\n- Parts: D1\n\nSolder D1.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1–R4,4,Resistor 150 Ω\n',
        },
      },
      {
        title: 'steps that list few of their parts, and a part that stays in its bag',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n\nSolder D1 and R1.\n\n## Join the supply\n\n- Connects: PS1.PLUS – R1.1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1,1,Resistor 150 Ω\nPS1,1,Supply 5 V\n',
        },
      },
      {
        title: 'a part that is not there yet, one that is not fitted, and pins with the names of parts',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1, R1–R3, U1\n\nSolder D1. Leave R9 empty. Do not fit D2 yet. Solder R1 to pin D2 of U1.\n',
          'parts.csv':
            'Reference,Quantity,Description,DNP\nD1,1,White LED 5 mm,\n"R1, R2, R3",3,Resistor 150 Ω,\nU1,1,Module,\nR9,1,Resistor,DNP\nD2,1,White LED 3 mm,\n',
        },
      },
    ],
    fails: [
      {
        title: 'a board that the words press in and no step lists',
        files: {
          'guide.md':
            '# Night light\n\n## Lay the wires\n\n- Parts: BB1, W1, W2\n- Power: off\n\nPress U1 into the left end of BB1. Push W1 from U1.GND to the rail.\n\n## Fit the light\n\n- Parts: D1, R1\n\nPut R1 to the right of U1.\n',
          'parts.csv':
            'Reference,Quantity,Description\nBB1,1,Breadboard\nU1,1,Module\nD1,1,White LED 5 mm\nR1,1,Resistor\n"W1, W2",2,Jumper wire\n',
        },
        expect: [
          { file: 'guide.md', line: 8, words: 'speaks of U1' },
          { file: 'parts.csv', line: 3, words: 'U1' },
        ],
      },
      {
        title: 'a resistor out of a row is soldered, and a lamp is joined, that no step takes up',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistors\n\n- Parts: R1, R3, R4, U1, C1\n\nPush R1 to R4 in. Solder R2 last.\n\n## Fit the lamp\n\n- Parts: C2\n- Connects: D1.A – R1.2\n\nSolder the leads.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nR1–R4,4,Resistor 150 Ω\nU1,1,Module\n"C1, C2",2,Capacitor\n',
        },
        expect: [
          { file: 'guide.md', line: 7, words: 'R2' },
          { file: 'guide.md', line: 12, words: 'D1' },
          { file: 'parts.csv', line: 2, words: 'D1' },
        ],
      },
      {
        title: 'the step that took up most parts is gone, and all that join list theirs',
        files: {
          'guide.md':
            '# Night light\n\n## Wire the lamp\n\n- Parts: W1\n- Connects: U1.1 – D1.A\n\nSolder.\n\n## Wire the button\n\n- Parts: W2\n- Connects: U1.2 – S1.1\n\nSolder.\n\n## Wire the supply\n\n- Parts: W3\n- Connects: U1.3 – D1.K\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nU1,1,Module\nS1,1,Push button\n"W1, W2, W3",3,Wire\n',
        },
        expect: [
          { file: 'guide.md', line: 6, words: 'D1 and U1' },
          { file: 'guide.md', line: 13, words: 'S1' },
        ],
      },
    ],
  },
});

interface Forgotten {
  readonly ref: Ref;
  readonly part: Part;
}

/** References that no step takes up, in a guide of which the steps take up most. */
function forgottenRefs(judged: Judged): Forgotten[] {
  const { build, facts } = judged;
  const uses = Object.values(facts.steps).flatMap((step) => step.uses.map(({ value }) => value));
  const refs = new Set(uses.flatMap(({ ref }) => ref ?? []));
  const whole = new Set(uses.flatMap(({ ref, part }) => (ref === null && part !== null ? [part] : [])));
  const all = build.parts
    .filter(({ fitted }) => fitted)
    .flatMap((part) => part.refs.map((ref): Forgotten => ({ ref, part })));
  const open = all.filter(({ ref, part }) => !refs.has(ref) && !whole.has(part.id));
  return open.length * mostTakenUp <= all.length || listsWhatItJoins(judged, all.length - open.length, all.length)
    ? open
    : [];
}

/** Where more than one in so many is taken up by no step, the steps do not mean to list their parts. */
const mostTakenUp = 4;

/** Every step that makes connections lists parts, several do, and all steps together take up a third of the parts. */
function listsWhatItJoins({ build, facts }: Judged, taken: number, all: number): boolean {
  const joining = build.instructions.sections.filter(({ id }) => (facts.steps[id]?.connects.length ?? 0) > 0);
  return joining.length >= 3 && joining.every(listsParts) && taken * 3 >= all;
}

interface Sighting {
  readonly section: Section;
  readonly place: Place;
  /** Where a fact joins it, which cannot be done without it. */
  readonly isJoined: boolean;
}

/** Where steps join a part or speak of it as of one that is there, in reading order. */
function sightingsOf({ build, facts }: Judged, refs: ReadonlySet<Ref>): Map<Ref, Sighting[]> {
  const known = knownThings(build);
  const talk = stepTalk(build, facts.actions);
  const found = new Map<Ref, Sighting[]>();
  const note = (ref: Ref, sighting: Sighting) => {
    if (refs.has(ref)) found.set(ref, [...(found.get(ref) ?? []), sighting]);
  };
  for (const section of build.instructions.sections) {
    for (const { value, places } of facts.steps[section.id]?.connects ?? []) {
      const [place] = places;
      if (place === undefined) continue;
      for (const ref of new Set([value.from.ref, value.to.ref])) note(ref, { section, place, isJoined: true });
    }
    for (const saying of (talk.get(section.id) ?? []).filter(isOfNow)) {
      for (const { refs: named, start, end } of refGroups(saying.text, known)) {
        for (const ref of named) note(ref, { section, place: saying.placeOf(start, end), isJoined: false });
      }
    }
  }
  return found;
}

function isOfNow({ kind, isAside, isElsewhere }: Saying): boolean {
  return kind !== 'picture' && !isAside && !isElsewhere;
}

function listsParts({ facts }: Section): boolean {
  return facts.some(({ label }) => label === 'parts');
}

function draftOf(
  { build }: Judged,
  section: Section,
  here: readonly (Forgotten & { readonly first: Sighting; readonly seen: readonly Sighting[] })[],
): FindingDraft {
  const refs = here.map(({ ref }) => ref);
  const fact = section.facts.filter(({ label }) => label === 'parts').at(-1);
  const joins = here.some(({ first }) => first.isJoined);
  const isOne = refs.length === 1;
  return {
    subjects: [`step:${section.id}`],
    mark: refs.join(' '),
    sides: [
      ...new Set(here.map(({ first }) => first.place)),
      ...(fact === undefined ? [] : [fact.place]),
      ...here.map(({ part }) => part.cells.reference ?? part.place),
      ...here.flatMap(({ seen }) => seen.filter(({ isJoined }) => isJoined).map(({ place }) => place)),
    ].slice(0, 6),
    basis: 'read',
    message: `The step ${stepName(build, section.id)} ${joins ? 'joins' : 'speaks of'} ${listed(refs)} and does not list ${isOne ? 'it' : 'them'} among its parts, nor does any other step.`,
    consequence: `A builder who lays out what the steps list has ${numbered(refs.length, 'part')} left over, and none here.`,
    remedy: `Add ${listed(refs)} to the parts of the step that fits ${isOne ? 'it' : 'them'}.`,
    mend: fact === undefined ? null : addToFact(build, fact, refs, 'Lists what the step works with.'),
  };
}
