import type { Judged } from '#core/assembled.ts';
import { tokensOf } from '#notation/names.ts';
import { defineCheck } from '../defineCheck.ts';
import { type SectionSentence, stepSentences } from '../stepSentences.ts';

export const noteAfterTheAct = defineCheck({
  id: 'note-after-the-act',
  title: 'What has to be done first is told first.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A guide is followed line by line: a note below the line that it prepares is read when the part is stuck.',
  basis: 'common practice: one action at a time, in the order in which they are done',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const all = stepSentences(judged.build);
    for (const [index, note] of all.entries()) {
      if (!isPreparing(note.text)) continue;
      const before = all.slice(0, index).filter(({ section }) => section === note.section);
      const act = before.findLast((sentence) => isDone(judged, sentence) && sharesThings(sentence.text, note.text));
      if (act === undefined) continue;
      yield {
        subjects: [`step:${note.section.id}`],
        mark: `note-${note.place.span[0] - note.section.place.span[0]}`,
        sides: [note.place, act.place],
        basis: 'read',
        message: 'The note tells of work that comes before what the step has told already.',
        consequence: 'A builder who follows line by line tries it without, and forces or undoes something.',
        remedy: 'Put the note ahead of that sentence, as a sentence of its own.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the note stands first, or speaks of what comes after',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamp\n\nNote: you may need to peel the film off the lamp socket. Then plug the lead into the lamp socket.\n\nNote: you will need to remove the lead again to close the lid.\n',
        },
      },
      {
        title: 'a note that asks for nothing',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamp\n\nPlug the lead into the lamp socket. Note: the lamp socket has a peg.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a film that is to be peeled off after the fact',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamp\n\nPlug the lead into the round socket of the lamp. Press until it clicks.\n\nNote: you may have to peel off the film from the round socket of the lamp.\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'comes before' }],
      },
      {
        title: 'a sensor that should have been cleaned',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the sensor\n\nGlue the light sensor into the front window. Important: you should clean the front window with alcohol first.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'comes before' }],
      },
    ],
  },
});

const preparing =
  /^\W*(?:please )?(?:note|nb|n\.b\.|important|tip|hint|remember|be aware|attention)\b.*?\b(?:need|have|had|should|must|want|remember|best|necessary)\b.*?\b(?:remove|peel|take off|pull off|break off|clean|unplug|loosen|unscrew|disconnect|trim|bend|strip|cut off|lift|open|tin|sand|drill|widen)\b/iu;
const later = /\b(?:again|later|afterwards|after|once|next|when you (?:are|have)|to (?:close|finish|undo|replace))\b/iu;

function isPreparing(text: string): boolean {
  return preparing.test(text) && !later.test(text);
}

/** Whether the sentence tells the builder to do something. */
function isDone({ facts }: Judged, { place }: SectionSentence): boolean {
  return facts.actions.some(
    ({ told, place: at }) =>
      told === 'do' && at.file === place.file && at.span[0] >= place.span[0] && at.span[1] <= place.span[1],
  );
}

/** Two words that name things, in both. */
function sharesThings(act: string, note: string): boolean {
  const named = new Set(tokensOf(act));
  return new Set(tokensOf(note).filter((word) => named.has(word) && word.length > 3 && !common.has(word))).size >= 2;
}

const common = new Set([
  'with',
  'from',
  'into',
  'onto',
  'that',
  'this',
  'then',
  'your',
  'have',
  'need',
  'each',
  'both',
  'them',
]);
