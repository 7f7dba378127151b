import type { Judged } from '#core/assembled.ts';
import { defineCheck } from '../defineCheck.ts';
import topics from '../knowledge/guideTopics.json';
import { listed, numbered } from '../say.ts';
import { topicsSaid } from '../topicsSaid.ts';
import { frontOf, isWrittenOut } from '../writtenGuide.ts';

export const introductionIncomplete = defineCheck({
  id: 'introduction-incomplete',
  title: 'The guide says what it is for, whom it is for, how long it takes, where to work, and who made it.',
  weight: 'slows',
  audience: 'publisher',
  words: 'English',
  why: 'A stranger decides by the first paragraph whether to start, and needs somebody to ask.',
  basis: 'IEC/IEEE 82079-1 and Open Know-How manifest 1.0, in substance; common practice',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    if (!isWrittenOut(judged.build)) return;
    const said = topicsSaid(judged.build);
    const lacking = [
      ...(saysPurpose(judged) ? [] : ['what it is for']),
      ...(showsThing(judged) ? [] : ['what it looks like when it is done (a picture before the first step)']),
      ...topics.before
        .filter(({ topic }) => isAsked(judged, topic))
        .flatMap(({ topic, says }) => (said.has(topic) ? [] : [says])),
    ];
    if (lacking.length === 0) return;
    yield {
      subjects: ['build:introduction'],
      sides: [frontOf(judged.build)],
      weight: lacking.length > 2 ? 'slows' : 'tidy',
      message: `The guide leaves out ${numbered(lacking.length, 'thing')} that a stranger asks first: ${listed(lacking, 9)}.`,
      consequence: 'A reader cannot tell whether this is for them, or whom to ask.',
      remedy:
        'Say it in a few sentences before the first step; skills, authors and cover picture may stand in twicebuilt.yaml.',
    };
  },
  examples: {
    passes: [
      {
        title: 'all of it in six sentences',
        files: {
          'guide.md':
            '# Night light\n\nThis lamp lights the hall at night. ![The lamp](a.jpg) It is for beginners, takes two hours and was designed by the lamp club. Send questions to club@lamps.example. Work at an open window.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
      {
        title: 'much of it in the settings; nothing is soldered or glued',
        files: {
          'twicebuilt.yaml':
            'format: 1\nsummary: A lamp for the hall.\nauthors:\n  - Lamp club\nskills:\n  - use a screwdriver\ncover: a.jpg\n',
          'guide.md':
            '# Night light\n\nReport an error to the lamp club.\n\n## Fit the lamp\n\n- Time: 5 min\n\nPush D1 in.\n\n## Fit the switch\n\nPush S1 in.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
      {
        title: 'a page that has only begun',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' },
      },
    ],
    fails: [
      {
        title: 'straight to the iron',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 1, words: 'what it is for' }],
      },
      {
        title: 'one thing left out',
        files: {
          'guide.md':
            '# Night light\n\nThis lamp lights the hall at night. ![The lamp](a.jpg) It is for beginners and was designed by the lamp club. Send questions to club@lamps.example. Work at an open window.\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 1, words: 'how long it takes' }],
      },
    ],
  },
});

function beforeSteps({ build }: Judged) {
  const { sections } = build.instructions;
  const first = sections.findIndex(({ role }) => role === 'step');
  return sections.slice(0, Math.max(first, 0)).filter(({ role }) => role !== 'parts' && role !== 'tools');
}

function saysPurpose(judged: Judged): boolean {
  if (judged.build.settings.summary !== null) return true;
  return beforeSteps(judged).some(({ blocks }) =>
    blocks.some(({ kind, place }) => kind === 'paragraph' && (place.quote.match(/\p{L}{2,}/gu) ?? []).length >= 6),
  );
}

function showsThing(judged: Judged): boolean {
  return judged.build.settings.cover !== null || beforeSteps(judged).some(({ pictures }) => pictures.length > 0);
}

/** What the settings or the steps say already, or what this build does not ask for. */
function isAsked({ build, facts }: Judged, topic: string): boolean {
  const { settings } = build;
  switch (topic) {
    case 'skills':
      return settings.skills.length === 0;
    case 'time':
      return !Object.values(facts.steps).some(({ minutes }) => minutes !== null);
    case 'authors':
      return (
        settings.authors.length === 0 &&
        !build.licences.some(({ path }) => hasHolder(build.texts.get(path)?.text ?? ''))
      );
    case 'place':
      return facts.actions.some(({ kind, told }) => told === 'do' && fuming.has(kind)) && !tellsOfAir(facts);
    default:
      return true;
  }
}

const fuming: ReadonlySet<string> = new Set(['solder', 'desolder', 'glue', 'paint', 'etch']);

function tellsOfAir(facts: Judged['facts']): boolean {
  return Object.values(facts.steps).some(({ hazards }) =>
    hazards.some(({ value }) => /smoke|fume|vapour|vapor|breathe|air/i.test(value.message)),
  );
}

function hasHolder(text: string): boolean {
  return /copyright\s+(?:\(c\)|©)?\s*\d{4}\S*\s+\p{Lu}/iu.test(text);
}
