import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import { defineCheck } from '../defineCheck.ts';
import { partNouns, wordForms } from '../partNouns.ts';
import { firstRows, fittedRows, rowName } from '../partWords.ts';
import { listed } from '../say.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const partNeverSpokenOf = defineCheck({
  id: 'part-never-spoken-of',
  title: 'Each part of the list is spoken of where it is used.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A part that is left over makes a builder look for the step that was missed.',
  basis: 'common practice: names of the list, less those that the text speaks of',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run({ build, facts }) {
    if (Object.values(facts.steps).some(({ uses }) => uses.length > 0)) return;
    const spoken = spokenWords(build);
    const rows = fittedRows(build);
    const silent = rows.filter((part) => part.refs.length === 0 && !isSpokenOf(part, spoken));
    // Where steps leave most parts unsaid, they do not mean to name them.
    if (silent.length === 0 || silent.length > rows.length * (1 - leastSpoken)) return;
    yield {
      subjects: ['build:parts'],
      mark: 'unspoken',
      sides: firstRows(silent),
      basis: 'read',
      message: `${listed(silent.map(rowName), 6)} ${silent.length === 1 ? 'stands' : 'stand'} in the list, and no step says where ${silent.length === 1 ? 'it goes' : 'they go'}.`,
      consequence: 'A builder has it left over at the end, and looks for the step that was missed.',
      remedy: 'Say in a step where it goes, or take the row out.',
    };
  },
  examples: {
    passes: [
      {
        title: 'by its noun, by its verb, by another name, in a heading, in a picture’s words',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × white lamp\n- 4 × M3 spacer\n- 8 × M3 screw\n- 1 × case lid\n- 1 × radio module\n- 1 × tube of super glue\n- 1 × cell\n\n## Fit the lamp\n\nPut it in beside the radio and glue it down. Set the standoffs on the base and screw them down.\n\n![The cell in its tray](a.jpg)\n\n## Close the lid\n\nPress.\n',
        },
      },
      {
        title: 'steps that name few of their parts, and steps that list them',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × white lamp\n- 4 × M3 spacer\n- 8 × M3 screw\n- 1 × lid\n- 1 × cell\n\n## Fit it\n\nSolder the lamp and everything else as on the board.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a knob that no step knows',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × white lamp\n- 1 × matching knob\n- 1 × dimmer\n- 1 × lid\n- 1 × cell\n\n## Fit the lamp\n\nSolder the lamp and the dimmer. Put the cell in and press the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: '‘matching knob’' }],
      },
      {
        title: 'a shade that the text only waits for',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit the lamp\n\nSolder the lamp and the dimmer. Put the cell in and press the lid on. The lamp is ready for its shade.\n',
          'parts.csv': 'Quantity,Description\n1,White lamp\n1,Dimmer\n1,Cell\n1,Lid\n1,"Shade, clear"\n',
        },
        expect: [{ file: 'parts.csv', line: 6, words: '‘Shade’' }],
      },
    ],
  },
});

const leastSpoken = 0.6;
const toCome = /\b(?:waiting|ready|room|space) for\b[^.,;]*/giu;

/** Every word of the steps and of the prose around them, in the form that all its spellings share. */
function spokenWords({ instructions }: Build): ReadonlySet<string> {
  const sections = instructions.sections.filter(({ role }) => role === 'step' || role === 'prose');
  const texts = sections.flatMap((section) => [
    section.heading,
    ...sentencesIn(section).map(({ text }) => text),
    ...section.pictures.map(({ alt }) => alt),
  ]);
  return new Set(texts.flatMap((text) => wordForms(text.replace(toCome, ' '))));
}

function isSpokenOf(part: Part, spoken: ReadonlySet<string>): boolean {
  const { own, alike } = partNouns(part);
  return [...own, ...alike].some((name) => spoken.has(name));
}
