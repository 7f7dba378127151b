import { closingWork } from '../closingWork.ts';
import { defineCheck } from '../defineCheck.ts';
import { proseOf } from '../proseOf.ts';
import { stepName } from '../say.ts';
import { sentencesOfSection } from '../stepSentences.ts';

export const reopeningUntold = defineCheck({
  id: 'reopening-untold',
  title: 'Whoever is sent back into a closed case is told how to open it.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A lid that was made to snap shut breaks where it is prised in the wrong place.',
  basis: 'common practice: checks inside a case name the way in',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    const closing = closingWork(build);
    if (closing === null || !closing.isSnapped) return;
    if (proseOf(build).some(({ text }) => opens.test(text))) return;
    const { sections } = build.instructions;
    const { section: closed, place: shutAt } = closing.sentence;
    const after = sections.slice(sections.indexOf(closed)).filter(({ role }) => role === 'step' || role === 'prose');
    const inside = after
      .flatMap(sentencesOfSection)
      .filter(
        ({ section, place, text }) => (section !== closed || place.span[0] > shutAt.span[0]) && looksInside.test(text),
      );
    const [first] = inside;
    if (first === undefined) return;
    yield {
      subjects: [`step:${first.section.id}`],
      sides: [...inside.slice(0, 4).map(({ place }) => place), shutAt],
      basis: 'read',
      message: `${stepName(build, first.section.id)} has a builder look at what lies inside; ${stepName(build, closed.id)} has shut the case, and no word tells how it opens.`,
      consequence: 'A builder prises at the wrong edge, and breaks a clip or pulls a cable off.',
      remedy: 'Say where to press or pull, and with what; or test before the case is shut.',
    };
  },
  examples: {
    passes: [
      {
        title: 'the way in is told, or the lid is screwed',
        files: {
          'guide.md':
            '# Night light\n\n## Close it\n\nSnap the lid into place.\n\n## Try it\n\nIf it stays dark, check the cables. To open the case, press both clips.\n',
        },
      },
      {
        title: 'what can be seen from outside',
        files: {
          'guide.md':
            '# Night light\n\n## Check the wiring\n\nCheck all cables.\n\n## Close it\n\nSnap the lid into place.\n\n## Try it\n\nCheck that the lamp glows.\n',
        },
      },
    ],
    fails: [
      {
        title: 'cables behind a lid that was snapped on',
        files: {
          'guide.md':
            '# Night light\n\n## Close it\n\nSnap the lid into place.\n\n## Try it\n\nSwitch it on. If it stays dark, check all of your cables.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: '‘Try it’' }],
      },
      {
        title: 'a battery behind a lid that was glued on',
        files: {
          'guide.md':
            '# Night light\n\n## Close it\n\nGlue the lid onto the base.\n\n## Use it\n\nReplace the battery once a year.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: '‘Use it’' }],
      },
    ],
  },
});

const looksInside =
  /\b(?:(?:double-?|re-?)?check|inspect|replace|swap|change|re-?seat|re-?connect|re-?solder|look (?:at|over))\b[^.]*?\b(?:cables?|wires?|wiring|connections?|solder joints?|joints?|battery|batteries|cell|fuse)\b/iu;
const opens =
  /\b(?:open(?:s|ed|ing)?|re-?open|take off|pull off|lift(?: off| up)?|remove|prise|pry|unclip|unsnap|undo|release|pop)\b[^.]*?\b(?:lid|case|cover|enclosure|housing|box|shell|back ?plate|clips?|it again)\b/iu;
