import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { listed, stepName } from '../say.ts';
import { sentencesOfSection, stepSentences } from '../stepSentences.ts';

export const connectorBySide = defineCheck({
  id: 'connector-by-side',
  title: 'A connector is named by what is printed beside it, or by its side with the way the thing lies.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Top and front change places when a board is turned; the words beside a socket do not.',
  basis: 'common practice: name, number or position of a connector, with the view from which it is meant',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    const front = build.instructions.sections.filter(({ role }) => role !== 'step').flatMap(sentencesOfSection);
    if (front.some(({ text }) => heldSo.test(text) && side.test(text))) return;
    const all = stepSentences(build);
    const found = all.flatMap((sentence) => {
      const words = plugs.test(sentence.text) ? byPlaceAlone(sentence.text) : null;
      if (words === null) return [];
      const isHeld = all.some(({ section, text }) => section === sentence.section && heldSo.test(text));
      return isHeld ? [] : [{ ...sentence, words }];
    });
    for (const [step, sentences] of groupedBy(found, ({ section }) => section.id)) {
      yield {
        subjects: [`step:${step}`],
        sides: sentences.slice(0, 5).map(({ place }) => place),
        basis: 'read',
        message: `${stepName(build, step)} names a connector by where it sits alone (${listed(sentences.map(({ words }) => `‘${words}’`))}); no word tells how the thing is held or what is printed there.`,
        consequence: 'A builder who holds it the other way round plugs into another connector.',
        remedy: 'Add the name that is printed beside it, or say from where it is seen; where either will do, say that.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'a printed name, a way to hold it, or either will do',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamp\n\nPlug the lead into the left socket, marked OUT.\n\n## Join the sensor\n\nHold the board with the button towards you. Plug the cable into the left port.\n\n## Join the fan\n\nPlug its lead into the top or bottom port, either will do.\n\n## Feed it\n\nPlug the supply into the power socket.\n',
        },
      },
      {
        title: 'the guide says once how the board lies',
        files: {
          'guide.md':
            '# Night light\n\n## Names\n\nThe board lies with its button to the left.\n\n## Join the lamp\n\nPlug the lead into the upper socket.\n\n## Close it\n\nPut the lid on the front of the box.\n',
        },
      },
    ],
    fails: [
      {
        title: 'top and bottom of a board that can be turned',
        files: {
          'guide.md':
            '# Night light\n\n## Join the lamp\n\nThe red lead is plugged into the top socket and the blue one into the bottom socket.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '‘into the top socket’' }],
      },
      {
        title: 'the front of a sensor',
        files: {
          'guide.md':
            '# Night light\n\n## Join the sensor\n\nPlug the short cable into the front of the light sensor.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '‘into the front of the light sensor’' }],
      },
    ],
  },
});

const sides = 'top|bottom|upper|lower|left|right|left-hand|right-hand|front|rear|back';
const side = new RegExp(`\\b(?:${sides})\\b`, 'iu');
const plugs = /\b(?:plug(?:s|ged)?|connect(?:s|ed)?|insert(?:s|ed)?|push(?:es|ed)?|attach(?:es|ed)?|goes|go)\b/iu;
const bySide = new RegExp(
  `\\b(?:in)?to the (?:${sides}) (?:port|connector|socket|header|jack|receptacle)s?\\b|\\binto the (?:${sides}|side)(?: side)? of (?:the|its|your) (?:[\\p{L}\\d-]+ ){0,2}[\\p{L}\\d-]+`,
  'iu',
);
const settled =
  /\b(?:marked|labell?ed|printed|named|called|says|reads|either|any|does(?: not|n[’']t) matter|identical|interchangeable|closest|nearest|next to|beside)\b|[‘’“”"]|\b[A-Z]{1,4}\d+\b(?= ?[).,])/u;
const heldSo =
  /\b(?:hold|held|lies?|laid|lay|seen|viewed|looking|faces?|facing|turn(?:ed)?|with (?:its|the) (?:[\p{L}-]+ ){1,4}(?:up|down|left|right|towards|away|(?:at|to) the))\b/iu;

/** The words that name a connector by its side, where nothing else in the sentence tells which it is. */
function byPlaceAlone(sentence: string): string | null {
  const words = bySide.exec(sentence)?.[0] ?? null;
  if (words === null || settled.test(sentence)) return null;
  const isCable = /\b(?:port|connector|socket|header|jack|receptacle)s?$/iu.test(words);
  return isCable || /\b(?:cables?|leads?|wires?|plugs?|connectors?)\b/iu.test(sentence) ? words : null;
}
