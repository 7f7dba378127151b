import type { Judged } from '#core/assembled.ts';
import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { maskMarkup } from '#prose/mentions/maskMarkup.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { placeInside } from '#prose/placeInside.ts';
import { actionsOfStep } from '#rehearsal/actionsOfStep.ts';
import { blocksOfWords } from '../blocksOfWords.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { linksOf } from '../linksOf.ts';
import { stepName } from '../say.ts';

export const instructionTooCoarse = defineCheck({
  id: 'instruction-too-coarse',
  title: 'A step says in words, numbers or a picture what exactly to do.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'The maker sees the finished thing; a stranger sees the sentence alone.',
  basis: 'common practice; IEC/IEEE 82079-1, in substance: measurable instructions, one action at a time',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    for (const section of judged.build.instructions.sections.filter(({ role }) => role === 'step')) {
      yield* shownNowhere(section);
      yield* withoutMeasure(section);
      yield* pictureAlone(section);
      yield* tooMuch(judged, section);
    }
  },
  examples: {
    passes: [
      {
        title: 'shown in a picture, on the board, in a table or behind a link; a length in words',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nPlace D1 as shown.\n\n![D1 with its flat side left](a.jpg)\n\n## Wire it\n\nWire it as shown on the silkscreen. Wire S1 as shown in [the plan](plan.svg).\n\nCut the wire to the right length, 40 mm.\n\n| from | to |\n| --- | --- |\n| S1 | D1 |\n\n## Close it\n\nTrim the leads as needed. Press the lid on.\n',
          'plan.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>\n',
        },
      },
      {
        title: 'a picture with a caption that tells',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\n![Push S1 through the hole from inside](a.jpg)\n\n## Close it\n\nPress the lid on.\n',
        },
      },
    ],
    fails: [
      {
        title: 'as shown, and nothing is shown',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nBend the leads as shown and solder them.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'as shown' }],
      },
      {
        title: 'a length that only the maker knows; a picture without a word',
        files: {
          'guide.md':
            '# Night light\n\n## Make the leads\n\nCut the wire to a suitable length.\n\n## Fit the lamp\n\n![](a.jpg)\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'to a suitable length' },
          { file: 'guide.md', line: 7, words: 'no words' },
        ],
      },
    ],
  },
});

const shown =
  /\bas (?:shown|pictured|depicted|illustrated|seen|can be seen)(?: (?:above|below|here|in the (?:picture|photo|image|figure)s?(?: (?:above|below))?))?(?=[\s.,;:)]|$)(?! (?:in|on|by|at)\b)/iu;

/** 'As shown', with no picture, table, drawing or link in the step. */
function* shownNowhere(section: Section): Iterable<FindingDraft> {
  const holdsMore = section.blocks.some(
    ({ kind, place }) => kind === 'table' || kind === 'code' || /<(?:img|video|iframe)/i.test(place.quote),
  );
  if (section.pictures.length > 0 || holdsMore || linksOf(section).length > 0) return;
  for (const { words, place } of phrases(section, shown)) {
    yield {
      subjects: [`step:${section.id}`],
      mark: `shown-${place.span[0] - section.place.span[0]}`,
      sides: [place],
      basis: 'read',
      message: `The step says ‘${words}’, and shows no picture.`,
      consequence: 'A builder looks for a picture that is not there, and guesses.',
      remedy: 'Add the picture to this step, or say it in words.',
    };
  }
}

const vague =
  /\b(?:cut|trim|strip|shorten|drill|bend)\b[^.;]*?\b(?:to (?:an? |the )?(?:suitable|appropriate|right|correct|proper|desired|required|necessary) (?:length|size|depth|angle|shape|diameter)|to length|an? (?:suitable|appropriate|suitably sized|big enough|large enough) (?:hole|length|piece)|appropriately|accordingly)\b/iu;

/** A cut or a hole whose size nobody says. */
function* withoutMeasure(section: Section): Iterable<FindingDraft> {
  for (const { words, place, sentence } of phrases(section, vague)) {
    if (/\d/.test(sentence) || /\b(?:as long as|so that|until|same|equal|mark|template|flush)\b/i.test(sentence))
      continue;
    yield {
      subjects: [`step:${section.id}`],
      mark: `vague-${place.span[0] - section.place.span[0]}`,
      sides: [place],
      basis: 'read',
      message: `‘${words}’ does not say how long or how large.`,
      consequence: 'A builder guesses, and cuts too short or drills too wide.',
      remedy: 'Give the measure, with its unit, or what it must reach.',
    };
  }
}

/** A step that is a picture without a word beside or under it. */
function* pictureAlone(section: Section): Iterable<FindingDraft> {
  const spoken = section.blocks.map(({ place }) => maskMarkup(place.quote)).join(' ');
  const tells = (spoken.match(/\p{L}{2,}/gu) ?? []).length >= 3 || section.facts.length > 0;
  if (tells || section.pictures.length === 0) return;
  yield {
    subjects: [`step:${section.id}`],
    mark: 'no-words',
    sides: [section.place],
    weight: 'tidy',
    basis: 'read',
    message: `The step ‘${section.heading}’ has a picture and no words.`,
    consequence: 'A builder has to work out from the picture what changed.',
    remedy: 'Say in a sentence what to do and what the picture shows.',
  };
}

/** So much work without a picture that a builder loses their place. */
function* tooMuch(judged: Judged, section: Section): Iterable<FindingDraft> {
  if (section.pictures.length > 0) return;
  const work = actionsOfStep(judged.facts, section.id).filter(({ told }) => told === 'do');
  if (work.length < most) return;
  yield {
    subjects: [`step:${section.id}`],
    mark: 'too-much',
    sides: [section.place],
    weight: 'tidy',
    basis: 'read',
    message: `The step ${stepName(judged.build, section.id)} tells a builder to do ${work.length} things, and shows no picture.`,
    consequence: 'A builder loses their place, and skips one.',
    remedy: 'Split the step, or show the state in between.',
  };
}

const most = 16;

function phrases(section: Section, pattern: RegExp): { words: string; place: TextPlace; sentence: string }[] {
  return blocksOfWords(section).flatMap((place) =>
    sentencesOf(maskMarkup(place.quote)).flatMap(({ text, start }) => {
      const match = pattern.exec(text);
      if (match === null) return [];
      const at = start + match.index;
      const words = match[0].replace(/\s+/g, ' ');
      return [{ words, place: placeInside(place, at, at + match[0].length), sentence: text }];
    }),
  );
}
