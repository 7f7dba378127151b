import type { Build } from '#core/build.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import type { Section } from '#core/step.ts';
import { plainText } from '#core/text.ts';
import { slugOf } from '#notation/names.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { filesPlaying } from '../filesPlaying.ts';
import { maskUnread } from '../maskUnread.ts';
import { findPlaceholders } from '../placeholders.ts';

export const placeholderLeft = defineCheck({
  id: 'placeholder-left',
  title: 'Nothing is left to be written in what a builder reads.',
  weight: 'slows',
  audience: 'builder',
  why: 'A stand-in marks the very place where the maker knew that something was missing.',
  basis: 'common practice: marks such as TODO, TBD and lorem ipsum, and headings with nothing under them',
  needs: { subject: ['files'], witnesses: [] },
  *run({ build }) {
    for (const file of filesPlaying(build, 'guide', 'parts', 'tools', 'wiring')) {
      const source = build.texts.get(file);
      if (source !== undefined) yield* inText(source);
    }
    yield* emptyHeadings(build);
  },
  examples: {
    passes: [
      {
        title: 'code, part numbers, to-do lists and batteries that are inserted here',
        files: {
          'guide.md':
            '# To-do light\n\nA lamp for your todo list. The regulator AMS1117-XXX comes in many voltages.\n\n## Insert the cell\n\nInsert the battery here, with its + to the spring. Call `TODO()` in a shell.\n\n```cpp\n// TODO: dim slowly\n```\n\n<!-- TODO: better photo -->\n\n## Test it\n\nIt glows.\n',
        },
      },
      {
        title: 'a heading that only gathers others',
        files: {
          'guide.md':
            '# Night light\n\n## Assembly\n\n### Fit the lamp\n\nSolder D1.\n\n### Close it\n\nPress the lid on.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a note to oneself in a step',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\nTODO: say which way round.\n\n## Close it\n\nInsert picture here.\n',
        },
        expect: [
          { file: 'guide.md', line: 6, column: 1, words: 'TODO' },
          { file: 'guide.md', line: 10, words: 'Insert picture here' },
        ],
      },
      {
        title: 'a cell of the parts list that says TBD',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          'parts.csv': 'Reference,Quantity,Value,Description\nD1,1,,White LED 5 mm\nR1,1,TBD,Resistor\n',
        },
        expect: [{ file: 'parts.csv', line: 3, column: 6, words: 'TBD' }],
      },
      {
        title: 'a heading of a template',
        files: {
          'guide.md':
            '# Project title\n\nA lamp.\n\n## Fit the lamp\n\nSolder D1.\n\n## Step title\n\nPress the lid on.\n',
        },
        expect: [
          { file: 'guide.md', line: 1, words: 'Project title' },
          { file: 'guide.md', line: 9, words: 'Step title' },
        ],
      },
      {
        title: 'a heading with nothing under it',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Test it\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'Test it' }],
      },
    ],
  },
});

function* inText(source: SourceText): Iterable<FindingDraft> {
  for (const { words, at } of findPlaceholders(maskUnread(source))) {
    const place = placeOf(source, [at, at + words.length]);
    yield {
      subjects: [`file:${source.file}`],
      mark: slugOf(words),
      sides: [place],
      message: `${JSON.stringify(words)} stands where something was to be written.`,
      consequence: 'A builder comes to a gap where the maker knew that something was missing.',
      remedy: 'Write what is missing, or take the note out.',
    };
  }
}

/** Headings without words, and headings with neither words nor further headings under them. */
function* emptyHeadings({ instructions: { sections } }: Build): Iterable<FindingDraft> {
  for (const [index, section] of sections.entries()) {
    const next = sections[index + 1];
    const gathers = next !== undefined && next.file === section.file && next.depth > section.depth;
    const wordless = section.heading.trim() === '' && section.depth > 0;
    if (standIn.test(section.heading)) yield* standInHeading(section);
    if (section.depth === 0 || section.role === 'title' || (!wordless && (gathers || holdsSomething(section))))
      continue;
    yield {
      subjects: [`file:${section.file}`],
      mark: `heading-${section.id}`,
      sides: [section.place],
      message: wordless ? 'A heading has no words.' : `Nothing stands under the heading ‘${section.heading}’.`,
      consequence: 'A builder does not learn what to do there.',
      remedy: wordless ? 'Give the heading a name, or take it out.' : 'Write the section, or take the heading out.',
    };
  }
}

/** Headings that a template brings along. */
const standIn =
  /^(?:(?:your|my) )?(?:(?:project|build|guide|step|section|chapter|device) (?:title|name)|heading(?: \d+)?|title|untitled(?: document)?|new (?:page|step|section))(?: (?:here|goes here))?$/i;

function* standInHeading({ heading, file, id, place }: Section): Iterable<FindingDraft> {
  yield {
    subjects: [`file:${file}`],
    mark: `heading-${id}`,
    sides: [place],
    message: `The heading ‘${heading}’ is that of a template.`,
    consequence: 'A builder does not learn what this is about.',
    remedy: 'Write its name.',
  };
}

function holdsSomething(section: Section): boolean {
  return (
    section.facts.length > 0 ||
    section.pictures.length > 0 ||
    section.blocks.some((block) => block.kind !== 'paragraph' || plainText(block.children).trim() !== '')
  );
}
