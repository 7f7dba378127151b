import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { type Inline, plainText } from '#core/text.ts';
import { defineCheck } from '../defineCheck.ts';
import { everyInline, runsOf } from '../runningText.ts';
import { listed, stepName } from '../say.ts';

export const linkAlone = defineCheck({
  id: 'link-alone',
  title: 'A step says what to do itself, and does not leave it to a page elsewhere.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A page elsewhere moves, changes or goes, and tells of another version than the one that was built.',
  basis: 'common practice: a guide stands without the pages that it links to',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build }) {
    const steps = build.instructions.sections.filter(({ role }) => role === 'step');
    const found = steps.flatMap((section) => aloneIn(section).map((place) => ({ section, place })));
    if (found.length === 0) return;
    const names = [...new Set(found.map(({ section }) => stepName(build, section.id)))];
    yield {
      subjects: ['build:steps'],
      sides: found.slice(0, 5).map(({ place }) => place),
      basis: 'read',
      message: `${listed(names)} ${names.length === 1 ? 'leaves' : 'leave'} the work to a page elsewhere, and ${names.length === 1 ? 'says' : 'say'} nothing of it here.`,
      consequence: 'A builder without that page, or with a newer one, does not know what to do.',
      remedy: 'Write down in a few sentences what was done and with which version; keep the link for more.',
    };
  },
  examples: {
    passes: [
      {
        title: 'the work is told, and the link is for more',
        files: {
          'guide.md':
            '# Lamp\n\n## Load it\n\nHold the button, plug in the cable, and let go. Run the upload. See [the instructions](https://code.example/load) for other systems.\n\n## Read it\n\nFollow [the next page](page.md).\n',
          'page.md': '# Page\n\nSolder it.\n',
        },
      },
      {
        title: 'a thing to fetch, and a page to look at while working',
        files: {
          'guide.md':
            '# Lamp\n\n## Load it\n\n1. Download the [installer](https://code.example/get).\n2. Run it and choose the second entry.\n3. Open [the serial monitor](https://code.example/monitor) and wait for the first line.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a whole step, and a point of a list',
        files: {
          'guide.md':
            '# Lamp\n\n## Solder it\n\n1. Solder D1.\n2. Follow [this guide](https://notes.example/led) to solder the LED.\n3. Cut the leads.\n\n## Load it\n\nThe instructions are [here](https://code.example/load).\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: '‘Solder it’ and ‘Load it’' }],
      },
      {
        title: 'a bare address',
        files: {
          'guide.md':
            '# Lamp\n\n## Solder it\n\nSolder D1. Cut its leads.\n\n## Set up the computer\n\nPlease see https://notes.example/setup for instructions.\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: '‘Set up the computer’' }],
      },
    ],
  },
});

const sends =
  /^(?:(?:now|then|first|next),? )?(?:please )?(?:just )?(?:follow|see|read|refer to|consult|go through|watch|check(?: out)?|use)\b|^(?:the )?(?:instructions?|steps|details|guide|tutorial|video)\b.{0,30}\b(?:is|are|can be found)\b/i;
const aboutHow =
  /\b(?:guides?|tutorials?|instructions?|steps|how[ -]to|documentation|docs|manual|video|walk-?through|directions|here|this page|page)\b/i;

/** Runs that send away, where the step (of a paragraph) or the point (of a list) says no more than that. */
function aloneIn(section: Section): TextPlace[] {
  const runs = runsOf(section);
  const points = section.blocks.flatMap((block) =>
    block.kind === 'list' && block.ordered ? block.items.filter(({ blocks }) => blocks.length === 1) : [],
  );
  const inPoints = new Set(points.flatMap(({ blocks }) => blocks.map(({ place }) => place.span[0])));
  const own = runs.reduce((sum, { nodes }) => sum + wordsOf(nodes).length, 0);
  const isBare = section.pictures.length === 0 && section.facts.length === 0 && own <= most;
  return runs
    .filter(({ nodes, place }) => (isBare || inPoints.has(place.span[0])) && isOnlySending(nodes))
    .map(({ place }) => place);
}

/** More words than these tell something of the work. */
const most = 16;

function isOnlySending(nodes: readonly Inline[]): boolean {
  const words = plainText(nodes).trim();
  const leads = everyInline(nodes).some((node) => node.kind === 'link' && /^https?:/i.test(node.url));
  return leads && wordsOf(nodes).length <= most && sends.test(words) && aboutHow.test(words);
}

function wordsOf(nodes: readonly Inline[]): string[] {
  return plainText(nodes).match(/[^\s]+/g) ?? [];
}
