import type { Action } from '#core/action.ts';
import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { type Inline, plainText } from '#core/text.ts';
import { defineCheck } from '../defineCheck.ts';
import { everyInline, runsOf } from '../runningText.ts';
import { listed, stepName } from '../say.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const linkAlone = defineCheck({
  id: 'link-alone',
  title: 'A step says what to do itself, and does not leave it to a page elsewhere.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A page elsewhere moves, changes or goes, and tells of another version than the one that was built.',
  basis: 'common practice: a guide stands without the pages that it links to',
  needs: { subject: ['steps'], witnesses: [] },
  *run({ build, facts }) {
    const sections = build.instructions.sections.filter(({ role }) => role === 'step' || role === 'prose');
    const found = sections.flatMap((section) => {
      const places =
        section.role === 'step'
          ? [...aloneIn(section), ...leftIn(section, facts.actions)]
          : leftIn(section, facts.actions);
      return groupedPlaces(places).map((place) => ({ section, place }));
    });
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
        title: 'what to read for its own sake, and a fix that is told here',
        files: {
          'guide.md':
            '# Lamp\n\n## Solder it\n\nSolder D1. Cut its leads.\n\n## Licence\n\nSee [the licence](https://notes.example/licence).\n\n## When it flickers\n\nUse the method described [in this thread](https://code.example/7): solder a second capacitor across it.\n\n## More\n\n[All my guides](https://notes.example/all)\n',
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
        title: 'outside the steps: a workaround, a page for those who do not know, a section that names a page',
        files: {
          'guide.md':
            '# Lamp\n\n## Solder it\n\nSolder D1. Cut its leads.\n\n## Firmware\n\nYou should know the loader. If not, please follow [its instructions](https://code.example/start).\n\n## When it flickers\n\n- Use the workaround described [in this thread](https://code.example/7).\n- Solder a second capacitor across it.\n\n## Other colours\n\nFor a red lamp there is a great guide [over there](https://notes.example/red).\n',
        },
        expect: [
          { file: 'guide.md', line: 9, words: '‘Firmware’' },
          { file: 'guide.md', line: 13 },
          { file: 'guide.md', line: 18 },
        ],
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

const sendsForWork =
  /^\W*(?:(?:if|when|otherwise|else)\b[^,]{0,60}, ?)?(?:please |just |simply )*(?:(?:follow|use|apply)\b.*\b(?:guides?|tutorials?|instructions?|steps|documentation|docs|manual|video|walk-?through|work-?arounds?|fix|procedure|method|described|explained|shown)\b|make sure\b.*\b(?:is|are) (?:set[ -]?up|installed|configured|ready))/iu;
const tellsOfPage =
  /^\W*(?:(?:if|for|when)\b.{0,60}?,? ?)?there(?:['’]s| is| are) (?:an? |some )?(?:\p{L}+ ){0,3}(?:guides?|tutorials?|instructions|videos?|write-?ups?)\b/iu;

/**
 * Sentences that leave the work to a page on the web, in a paragraph or point that tells none of it; and sections
 * that hold nothing but the word of such a page.
 */
function leftIn(section: Section, actions: readonly Action[]): TextPlace[] {
  const sentences = sentencesIn(section);
  const isBare = sentences.length <= 2 && section.pictures.length === 0;
  return sentences.flatMap(({ text, place, block }) => {
    if (!runsOf(section).some((run) => run.place.span[0] === block.span[0] && leadsAway(run.nodes, text))) return [];
    const works = actions.some(
      ({ told, kind, place: at }) =>
        told === 'do' &&
        kind !== 'load-code' &&
        at.file === block.file &&
        at.span[0] >= block.span[0] &&
        at.span[0] < block.span[1],
    );
    const isLeft = sendsForWork.test(text) && !works && (text.match(/\S+/g) ?? []).length <= most;
    return isLeft || (isBare && tellsOfPage.test(text)) ? [place] : [];
  });
}

/** A link to the web whose words stand in the sentence. */
function leadsAway(nodes: readonly Inline[], sentence: string): boolean {
  const plain = (words: string) => words.replace(/\s+/g, ' ').trim();
  return everyInline(nodes).some(
    (node) => node.kind === 'link' && /^https?:/i.test(node.url) && plain(sentence).includes(plain(plainText([node]))),
  );
}

/** One place for each paragraph or point. */
function groupedPlaces(places: readonly TextPlace[]): TextPlace[] {
  return places.filter((place, index) => places.findIndex(({ line }) => line === place.line) === index);
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
