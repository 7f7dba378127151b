import type { Judged } from '#core/assembled.ts';
import type { TextPlace } from '#core/place.ts';
import { defineCheck } from '../defineCheck.ts';
import { wordsOfTools } from '../listedTools.ts';
import { listed } from '../say.ts';
import { type SectionSentence, stepSentences } from '../stepSentences.ts';
import { proseWords } from '../writtenGuide.ts';

export const requirementUntold = defineCheck({
  id: 'requirement-untold',
  title: 'A computer, a browser or an account that steps need is named before them.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Whoever has a tablet, or a browser that may not talk to USB, learns it when everything else is done.',
  basis:
    'common practice: what is needed stands ahead of the work; the drafts Web Serial and WebUSB of the WICG, which only some browsers follow',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const lacking = needs.flatMap((need) => {
      const [place] = need.places(stepSentences(judged.build));
      return place === undefined || need.isTold(judged) ? [] : [{ ...need, place }];
    });
    if (lacking.length === 0) return;
    yield {
      subjects: ['build:requirements'],
      sides: lacking.map(({ place }) => place),
      weight: lacking.every(({ isPlain }) => isPlain) ? 'tidy' : 'slows',
      basis: 'read',
      message: `The steps need ${listed(lacking.map(({ what }) => what))}; nothing ahead of them says so.`,
      consequence: 'A builder comes to the step and cannot go on with what is at hand.',
      remedy: 'Name it among the tools or in the introduction, with the systems and browsers that were tried.',
    };
  },
  examples: {
    passes: [
      {
        title: 'the computer is a tool, and the browser is named',
        files: {
          'guide.md':
            '# Night light\n\nYou need a computer with Chrome, and an account with the weather service.\n\n## Set it up\n\nPlug the lamp into your computer. Visit [the page](https://lamp.example/setup) and choose the serial port. Sign in to the weather service.\n',
        },
      },
      {
        title: 'no need of any',
        files: {
          'guide.md':
            '# Night light\n\n## Set it up\n\nOpen [the sheet](https://lamp.example/sheet). Plug the lamp in.\n\n## Close it\n\nPress the lid on.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a page that talks to a serial port',
        files: {
          'guide.md':
            '# Night light\n\nBring a computer.\n\n## Set it up\n\nVisit [the page](https://lamp.example/setup) and press Connect. Choose the lamp from the list of USB devices.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: 'a browser' }],
      },
      {
        title: 'a computer and an account that come as a surprise',
        files: {
          'guide.md':
            '# Night light\n\n## Set it up\n\nPlug the lamp into your computer. Sign in to the weather service.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'a computer and an account' }],
      },
    ],
  },
});

interface Need {
  readonly what: string;
  /** Most readers would have thought of it. */
  readonly isPlain: boolean;
  readonly isTold: (judged: Judged) => boolean;
  /** Where steps ask for it. */
  readonly places: (sentences: readonly SectionSentence[]) => TextPlace[];
}

const whole = (pattern: RegExp) => (sentences: readonly SectionSentence[]) =>
  sentences.filter(({ text }) => pattern.test(text)).map(({ place }) => place);

const page =
  /\b(?:visit|open|go to|navigate to|browse to)\b[^.]*\b(?:web ?site|web ?page|page|site|tool|flasher|installer)\b/iu;
const talksToDevice =
  /\b(?:list of (?:usb|serial) (?:devices|ports)|serial ports?|usb devices?|com ports?|web ?(?:usb|serial|bluetooth))\b/iu;

const needs: readonly Need[] = [
  {
    what: 'a computer',
    isPlain: true,
    isTold: (judged) => /\b(?:computer|laptop|pc|mac|windows|linux|macos|raspberry pi)\b/u.test(wordsOfTools(judged)),
    places: whole(/\b(?:to|into|on|with|from) (?:your|a|the) (?:computer|laptop|pc|mac)\b/iu),
  },
  {
    what: 'a browser that may talk to a device, which not every browser may',
    isPlain: false,
    isTold: ({ build }) => /\b(?:chrome|chromium|edge|opera|firefox|safari|browsers?)\b/iu.test(proseWords(build)),
    places: (sentences) =>
      sentences.flatMap(({ section, text, place }, index) => {
        const near = sentences.slice(index, index + 6).filter((one) => one.section === section);
        return page.test(text) && near.some((one) => talksToDevice.test(one.text)) ? [place] : [];
      }),
  },
  {
    what: 'an account',
    isPlain: false,
    isTold: (judged) =>
      /\b(?:account|subscription|membership|token|api key|sign(?:ing)? up)\b/iu.test(wordsOfTools(judged)),
    places: whole(
      /\b(?:(?:sign|log) in (?:to|with)|sign up|create an account|your (?:user ?name|account) (?:and|at|with|for))\b/iu,
    ),
  },
];
