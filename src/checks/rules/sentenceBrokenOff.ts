import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { type Block, plainText } from '#core/text.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { stepName } from '../say.ts';
import { type SpokenSentence, sentencesIn } from '../sentencesIn.ts';

export const sentenceBrokenOff = defineCheck({
  id: 'sentence-broken-off',
  title: 'Every sentence of the guide is finished.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'What a sentence was about to name is the one thing that its reader does not get.',
  basis: 'common practice of copy-editing: no paragraph ends with an article or a conjunction',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    for (const section of [...build.instructions.sections, ...build.beside]) {
      for (const place of brokenIn(section.blocks)) yield finding(build, section, place);
      for (const sentence of sentencesIn(section)) {
        const place = halfSaid(sentence);
        if (place !== null) yield finding(build, section, place);
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'what follows goes on with it: a list, a table, a picture, code, a paragraph in lower case',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\nTake D1 and\n\n- the lid\n- the base\n\nType the\n\n```\nmake\n```\n\nPress the\n\n![button](a.png)\n\nThen solder the\n\nother end, and wait.\n\n## Close it\n\nLay the lid on, and...\n',
        },
      },
      {
        title: 'a reservation with both halves',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\nThe lid is loose but even though it rattles it stays on. Take it off, and although there are clips, pull gently. It is small but even though there are holes it is not held.\n',
        },
      },
      {
        title: 'words that may end a sentence, and points without a full stop',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\n- Plug it in\n- Know what it is made of\n- Lay out the board you solder to\n- Set port A\n- Choose option a\n- Take all you have need of\n- Look at the wire this goes with\n- Press `the`\n',
        },
      },
    ],
    fails: [
      {
        title: 'an article at the end of a step, a conjunction in a point',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\nSolder D1 to the board. Turn the board over and cut the\n\n## Close it\n\n1. Press the lid on and\n2. Turn the knob.\n',
        },
        expect: [
          { file: 'guide.md', line: 5, column: 53, words: '‘the’' },
          { file: 'guide.md', line: 9, words: '‘and’' },
        ],
      },
      {
        title: 'a reservation without what it is held against',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\nFour screws would hold the lid but even though there are holes for them in the base. Press it on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '‘but even though’' }],
      },
      {
        title: 'before the steps it costs looks alone',
        files: {
          'guide.md': '# Night light\n\nThe lamp shines through all the long evenings of\n\n## Fit it\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: '‘of’' }],
      },
    ],
  },
});

/** Words after which more must come. */
const never = /(?:^|\s)(and|or|nor|the|an|a|than|because|your|our|their|into|onto)$/;
/** Words that end a sentence only behind 'what', 'that' and the like. */
const seldom = /(?:^|\s)(of|with|to)$/;
const asks = /\b(?:what|which|that|this|who|whom|where|how|you|we|it|they|made|need|used?|there|thing|something)\b/i;
/** 'Port a', 'option a'. */
const nameOfOne =
  /\b(?:pins?|port|option|type|side|phase|variant|version|step|figure|channel|point|row|column|part)\s+a$/i;

function brokenIn(blocks: readonly Block[]): TextPlace[] {
  return blocks.flatMap((block, index): TextPlace[] => {
    if (block.kind === 'list') return block.items.flatMap((item) => brokenIn(item.blocks));
    if (block.kind === 'quote') return brokenIn(block.blocks);
    if (block.kind !== 'paragraph' || goesOn(blocks[index + 1])) return [];
    const last = block.children.at(-1);
    const words = last?.kind === 'text' ? plainText(block.children).trimEnd() : '';
    const match = never.exec(words) ?? (asks.test(words) || words.split(/\s+/).length < 6 ? null : seldom.exec(words));
    const word = match?.[1] ?? '';
    const at = block.place.quote.lastIndexOf(word);
    if (match === null || at < 0 || nameOfOne.test(words)) return [];
    return [placeInside(block.place, at, at + word.length)];
  });
}

const opens = /\b(?:but|and|so|because) (?:even though|although|though|even if)\b/iu;
const verb =
  /\b(?:is|are|was|were|has|have|had|does|do|did|can|could|will|would|may|might|must|should|isn['’]t|aren['’]t|doesn['’]t|don['’]t|won['’]t|works?|fits?|needs?|goes|go|comes?|makes?|gets?|stays?|looks?|takes?|holds?|keeps?|sits?|\p{L}+ed)\b/giu;

/** 'But even though' and one clause, with nothing of which it is said. */
function halfSaid({ text, placeOf }: SpokenSentence): TextPlace | null {
  const match = opens.exec(text);
  if (match === null) return null;
  const rest = text.slice(match.index + match[0].length);
  const subjects = rest.match(/\b(?:it|they|we|you|I|there|this|these|that|those|he|she)\b/giu) ?? [];
  const isOne =
    /^ (?:it|they|there|this|these)\b/iu.test(rest) &&
    !/[,:–—]/u.test(rest) &&
    subjects.length === 1 &&
    (rest.match(verb) ?? []).length === 1 &&
    (rest.match(/\p{L}+/gu) ?? []).length <= 12;
  return isOne && /\.\s*$/u.test(rest) ? placeOf(match.index, match.index + match[0].length) : null;
}

/** A list, table, picture or code goes on with any sentence; a paragraph with one that begins in lower case. */
function goesOn(next: Block | undefined): boolean {
  if (next === undefined || next.kind === 'heading' || next.kind === 'rule') return false;
  if (next.kind !== 'paragraph') return true;
  const first = next.children.find((node) => node.kind !== 'text' || node.value.trim() !== '');
  return first === undefined || first.kind !== 'text' || !/^\s*\p{Lu}/u.test(first.value);
}

function finding(build: Build, section: Section, place: TextPlace): FindingDraft {
  const inStep = section.role === 'step';
  return {
    subjects: inStep ? [`step:${section.id}`] : [`file:${section.file}`],
    mark: `broken-${place.quote}`,
    sides: [place],
    weight: inStep ? 'slows' : 'tidy',
    basis: 'read',
    message: `A sentence ${inStep ? `in ${stepName(build, section.id)} ` : ''}breaks off after ‘${place.quote}’.`,
    consequence: 'A reader does not learn what was meant to come next.',
    remedy: 'Finish the sentence, or cut it back.',
  };
}
