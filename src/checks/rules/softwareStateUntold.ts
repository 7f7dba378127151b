import { defineCheck } from '../defineCheck.ts';
import { proseOf } from '../proseOf.ts';

export const softwareStateUntold = defineCheck({
  id: 'software-state-untold',
  title: 'It is said how far the code can be trusted, and when it last compiled.',
  weight: 'tidy',
  audience: 'publisher',
  words: 'English',
  why: 'Code that was a quick trial looks like code that ran for a year; builders take one for the other.',
  basis: 'common practice: state of the software, and a record of a clean build',
  needs: { subject: ['code', 'steps'], witnesses: [] },
  *run({ build }) {
    const source = build.sources.find(({ pins }) => pins.length > 0);
    if (source === undefined || build.settings.status !== null) return;
    const words = proseOf(build)
      .map(({ text }) => text)
      .join('\n');
    if (state.test(words)) return;
    yield {
      subjects: ['build:software-state'],
      sides: [{ kind: 'file', file: source.file }],
      message:
        'Neither settings nor text say how far the code has come: a trial, in use, finished, or last compiled when and with what.',
      consequence: 'A builder cannot tell a fault of the code from a fault of the bench.',
      remedy: 'Add a sentence: since when it runs, what is not done yet, and with which versions it last compiled.',
    };
  },
  examples: {
    passes: [
      {
        title: 'a sentence about it',
        files: {
          'guide.md':
            '# Night light\n\nThe firmware is beta: dimming does not work yet.\n\n## Load the code\n\nUpload it.\n',
          'main.ino': 'const int LAMP_PIN = 5;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'a status in the settings',
        files: {
          'twicebuilt.yaml': 'format: 1\nstatus: built ×2\n',
          'guide.md': '# Night light\n\n## Load the code\n\nUpload it.\n',
          'main.ino': 'const int LAMP_PIN = 5;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
      },
    ],
    fails: [
      {
        title: 'code of which nobody knows the state',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload it.\n',
          'main.ino': 'const int LAMP_PIN = 5;\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino' }],
      },
      {
        title: 'the word stable, said of the light alone',
        files: {
          'guide.md': '# Night light\n\nThe lamp stands steady on the table.\n\n## Load the code\n\nUpload it.\n',
          'main.py': 'from machine import Pin\n\nlamp = Pin(5, Pin.OUT)\n',
        },
        expect: [{ file: 'main.py' }],
      },
    ],
  },
});

/** Words by which authors tell the state of their code. */
const state =
  /\b(?:alpha|beta|prototype|experimental|work in progress|wip|proof of concept|unfinished|not (?:yet )?(?:finished|tested|implemented)|known (?:issues|bugs|problems)|tested (?:with|on|by|for)|(?:runs?|ran|running|in use) (?:for|since)|has been (?:built|running|in use)|stable (?:release|version|firmware)|release notes|changelog|revision \d|version \d|v\d+\.\d+|compile[sd]|sketch uses)\b/i;
