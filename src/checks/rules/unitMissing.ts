import type { Judged } from '#core/assembled.ts';
import type { TextPlace } from '#core/place.ts';
import { remember } from '#core/remember.ts';
import type { Section } from '#core/step.ts';
import { maskMarkup } from '#prose/mentions/maskMarkup.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { placeInside } from '#prose/placeInside.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { filesPlaying } from '../filesPlaying.ts';

export const unitMissing = defineCheck({
  id: 'unit-missing',
  title: 'Every length, time and temperature has its unit, and one guide measures in one system.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A hole of 3 is a hole of 3 mm to one builder and of 3/8 inch to the next.',
  basis: 'common practice: words of dimension with a bare number; ISO 80000-1 on writing quantities',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    if (saysUnitOnce(judged)) return;
    for (const section of judged.build.instructions.sections.filter(({ role }) => role === 'step')) {
      for (const { words, place } of bareNumbers(section)) {
        yield {
          subjects: [`step:${section.id}`],
          mark: words.toLowerCase().replace(/\s+/g, '-'),
          sides: [place],
          basis: 'read',
          message: `‘${words}’ gives a number without a unit.`,
          consequence: 'A builder guesses the unit, and cuts, drills or heats by it.',
          remedy: 'Write the unit behind the number.',
        };
      }
    }
    yield* twoSystems(judged);
  },
  examples: {
    passes: [
      {
        title: 'units, counts, pins and settings',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nDrill 3 holes. Drill a 3 mm hole. Strip 5 mm from the end. Solder 4 long wires to pins 2 and 3. Cut the strip into 5. Set the iron to 350 °C. Wait 10 seconds. Set the switch to 2. Cut 2 wires to 40 mm each.\n',
        },
      },
      {
        title: 'one sentence for all of them; inches that name a part',
        files: {
          'guide.md':
            '# Night light\n\nAll lengths are in mm.\n\n## Fit the lamp\n\nCut the leads to 5. The display of 0.96 inch fits. Cut the wire to 40 mm.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a hole, an end, an iron and a wait',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nDrill a 3 hole.\nStrip 5 from each end.\nSet the iron to 350.\nCut the leads to 5.\nWait 10, then go on.\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'a 3 hole' },
          { file: 'guide.md', line: 6, words: 'Strip 5' },
          { file: 'guide.md', line: 7, words: 'to 350' },
          { file: 'guide.md', line: 8, words: 'to 5' },
          { file: 'guide.md', line: 9, words: 'Wait 10' },
        ],
      },
      {
        title: 'inches here, millimetres there',
        files: {
          'guide.md':
            '# Night light\n\n## Make the leads\n\nCut the red wire to 6 inches.\n\n## Make the others\n\nCut the black wire to 150 mm.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'inches' }],
      },
    ],
  },
});

const number = '\\d+(?:[.,]\\d+)?';
const stop = '(?=[.;:)](?:\\s|$)|,\\s|\\s*$|\\s+(?:and|then|from|each|for|until)\\b)';

/** Words of dimension whose number can only be one of length, time or temperature. */
const patterns: readonly RegExp[] = [
  new RegExp(`\\ban? ${number} (?:hole|slot|groove|recess|cut-?out)\\b`, 'giu'),
  new RegExp(
    `\\bstrip (?:off |back |away )?(?:about |some )?${number} (?=(?:from|off|of (?:the )?(?:insulation|wire|cable|jacket)|at)\\b)`,
    'giu',
  ),
  new RegExp(`\\b(?:cut|trim|shorten|strip) (?:\\p{L}+ ){1,5}?to ${number}${stop}`, 'giu'),
  new RegExp(`\\b${number} (?:apart|in diameter)\\b`, 'giu'),
  new RegExp(`\\b(?:diameter|length|width|depth|thickness|spacing|distance) (?:of |is |= ?)${number}${stop}`, 'giu'),
  new RegExp(`\\b(?:iron|station|oven|bed|nozzle|hot plate|heat gun) (?:to|at) \\d{3}${stop}`, 'giu'),
  new RegExp(`\\bwait (?:for |about )?${number}${stop}`, 'giu'),
];

function bareNumbers(section: Section): { words: string; place: TextPlace }[] {
  return blocksOfWords(section).flatMap((place) => {
    return bareIn(place.quote).map(({ words, start, end }) => ({ words, place: placeInside(place, start, end) }));
  });
}

const bareIn = remember((quote) => {
  const plain = maskMarkup(quote);
  return patterns.flatMap((pattern) =>
    [...plain.matchAll(pattern)].map((match) => ({
      words: match[0].trim().replace(/\s+/g, ' '),
      start: match.index,
      end: match.index + match[0].trimEnd().length,
    })),
  );
});

/** 'All dimensions in mm' settles them all. */
function saysUnitOnce({ build }: Judged): boolean {
  return [...filesPlaying(build, 'guide')].some((file) =>
    /\b(?:all|every)\b[^.]{0,40}\b(?:in|are) (?:mm|millimet|cm|centimet|inch)/iu.test(
      build.texts.get(file)?.text ?? '',
    ),
  );
}

/** Inches that a builder measures out, where other lengths to measure are in millimetres. */
function* twoSystems({ build, facts }: Judged): Iterable<FindingDraft> {
  const shaped = facts.actions.filter(({ kind, told, step }) => told === 'do' && step !== null && shaping.has(kind));
  const imperial: TextPlace[] = [];
  const metric: TextPlace[] = [];
  for (const section of build.instructions.sections.filter(({ role }) => role === 'step')) {
    for (const place of blocksOfWords(section)) {
      for (const { text, start } of sentencesOf(maskMarkup(place.quote))) {
        const [inch, mm] = [inches.exec(text), millimetres.exec(text)];
        if ((inch === null) === (mm === null)) continue;
        const from = place.span[0] + start;
        const isShaped = shaped.some(
          ({ place: at }) => at.file === place.file && at.span[0] >= from && at.span[0] < from + text.length,
        );
        if (!isShaped) continue;
        const found = inch ?? mm;
        if (found !== null)
          (inch === null ? metric : imperial).push(
            placeInside(place, start + found.index, start + found.index + found[0].length),
          );
      }
    }
  }
  const [inch] = imperial;
  const [mm] = metric;
  if (inch === undefined || mm === undefined) return;
  yield {
    subjects: ['build:units'],
    sides: [...imperial.slice(0, 3), ...metric.slice(0, 2)],
    weight: 'tidy',
    basis: 'read',
    message: `The guide measures out ‘${inch.quote}’ in one place and ‘${mm.quote}’ in another.`,
    consequence: 'A builder with one ruler has to convert, and errs.',
    remedy: 'Give both units, or keep to one.',
  };
}

const shaping: ReadonlySet<string> = new Set(['cut', 'strip', 'drill', 'saw', 'bend']);
const inches = new RegExp(`${number}(?:/\\d+)?\\s?(?:inch(?:es)?\\b|″|"(?=[\\s.,;]))`, 'iu');
const millimetres = new RegExp(`${number}\\s?(?:mm|cm)\\b`, 'u');
