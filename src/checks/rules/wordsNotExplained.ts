import type { Build } from '#core/build.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed, numbered, stepName } from '../say.ts';

export const wordsNotExplained = defineCheck({
  id: 'words-not-explained',
  title: 'A guide for beginners explains the words of the trade before it uses them.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A beginner who does not know a word guesses, or gives up to look it up.',
  basis: 'common practice of writing for beginners',
  needs: { subject: ['steps'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    if (!isForBeginners(build)) return;
    const words = ledger.stops.flatMap((stop) => (stop.kind === 'words-unexplained' ? stop.words : []));
    const [first] = words;
    if (first === undefined) return;
    const names = words.map(({ place, term }) => (place.quote.length > 40 ? term : place.quote));
    yield {
      subjects: ['build:words'],
      basis: 'read',
      weight: words.length > 3 ? 'slows' : 'tidy',
      sides: words.slice(0, 5).map(({ place }) => place),
      message: `The guide is for beginners and uses ${numbered(words.length, 'word')} of the trade without saying what ${words.length === 1 ? 'it means' : 'they mean'}: ${listed(names, 8)}.`,
      consequence: `A beginner stops${first.step === null ? '' : ` in ${stepName(build, first.step)}`} to look up ‘${first.place.quote}’.`,
      remedy: `Say in a few words what each is where it first stands, for instance: ‘${first.term}: ${first.meaning}’; or add a glossary.`,
    };
  },
  examples: {
    passes: [
      {
        title: 'explained in brackets, by a clause, in a glossary, by a link, or asked as a skill',
        files: {
          'guide.md':
            '# Night light\n\nFor beginners. You should know how to measure with a multimeter.\n\n## Glossary\n\n- Flux: a paste that helps solder flow.\n\n## Solder it\n\nBrush on flux. Find a via, a small plated hole. Solder the header (a row of pins on plastic). Check the [polarity](https://example.org/polarity). Test for continuity.\n\n## Go on\n\nSolder the next header.\n',
        },
      },
      {
        title: 'a guide for people who have built before, whatever else they need not know',
        files: {
          'guide.md':
            '# Night light\n\nFor anyone who has soldered before. You need no knowledge of tides.\n\n## Solder it\n\nBrush flux on the pads of the header.\n',
        },
      },
      {
        title: 'words in their everyday sense',
        files: {
          'guide.md':
            '# Night light\n\nNo experience is needed.\n\n## Paint it\n\nSend it via the post in a tin. Take a short walk.\n',
        },
      },
    ],
    fails: [
      {
        title: 'flux and polarity, unexplained',
        files: {
          'guide.md':
            '# Night light\n\nThis is for beginners: no experience needed.\n\n## Solder it\n\nBrush on flux. Mind the polarity of the LED.\n\n## More\n\nFlux is a paste that cleans the metal.\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: '2 words' }],
      },
      {
        title: 'explained only later, and many at once',
        files: {
          'guide.md':
            '# Night light\n\n## Solder it\n\nSolder the header, then the MOSFET. Add the pull-up and strain relief.\n',
          'twicebuilt.yaml': 'format: 1\ntitle: Night light\nskills:\n  - none, never soldered before is fine\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'MOSFET' }],
      },
    ],
  },
});

const saysBeginner =
  /\b(?:for (?:absolute |complete |total )?beginners?|beginner[- ](?:friendly|level|project|guide|build)|first[- ]time builders?|never (?:soldered|built anything|held an iron)|no (?:(?:prior|previous|special|soldering|electronics|technical|particular) )*(?:experience|knowledge|skills?)(?: or (?:experience|knowledge|skills?))?(?: (?:is|are))? (?:needed|required|necessary|assumed)|your first (?:project|build|soldering))\b/i;

/** Guides whose skills or opening say so, and do not say elsewhere that something is asked. */
function isForBeginners({ settings, instructions }: Build): boolean {
  const skills = settings.skills.join('. ');
  if (skills !== '') return saysBeginner.test(skills) || /^(?:none|nothing|beginner)\b/i.test(skills.trim());
  const { sections } = instructions;
  const opening = sections.slice(
    0,
    Math.max(
      1,
      sections.findIndex(({ role }) => role === 'step'),
    ),
  );
  const words = opening.flatMap(({ blocks }) => blocks.map(({ place }) => place.quote)).join('\n');
  return (
    saysBeginner.test(words) && !/\bnot (?:suitable |suited |meant )?(?:for|a) (?:absolute )?beginner/i.test(words)
  );
}
