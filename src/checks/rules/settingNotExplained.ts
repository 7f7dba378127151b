import type { CodeConstant } from '#core/code.ts';
import { isPlaceholder } from '#formats/sources/credentials/judgeCredential.ts';
import { nameWords } from '../controllerEnds.ts';
import { defineCheck } from '../defineCheck.ts';
import { proseOf } from '../proseOf.ts';
import { listed } from '../say.ts';

export const settingNotExplained = defineCheck({
  id: 'setting-not-explained',
  title: 'The guide says which settings in the code a builder has to fill in.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A builder who loads the code as it is waits for a network called your-ssid.',
  basis: 'common practice: what has to be changed stands in one place and in the guide',
  needs: { subject: ['code', 'steps'], witnesses: [] },
  *run({ build }) {
    const prose = proseOf(build)
      .map(({ text }) => text)
      .join('\n');
    const open = build.sources
      .flatMap(({ constants }) => constants.filter(isToFillIn))
      .filter((one) => !isExplained(prose, one));
    if (open.length === 0) return;
    const names = [...new Set(open.map(({ name }) => name ?? ''))];
    yield {
      subjects: [`code:${open[0]?.place.file ?? ''}`],
      sides: open.slice(0, 5).map(({ place }) => place),
      message: `The code holds ${names.length === 1 ? 'a setting' : `${names.length} settings`} to be filled in (${listed(names)}); the guide does not speak of ${names.length === 1 ? 'it' : 'them'}.`,
      consequence: 'A builder loads the code as it is, and it does nothing that can be seen.',
      remedy: 'Say in the step that loads the code which lines to change, and to what.',
    };
  },
  examples: {
    passes: [
      {
        title: 'the step names the file to fill in',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nCopy secrets.example.h to secrets.h and fill it in. Upload.\n',
          'secrets.example.h': '#define BROKER_ADDRESS "your-broker"\n',
          'main.ino': '#include "secrets.h"\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'the step speaks of the matter in words',
        files: {
          'guide.md':
            '# Night light\n\n## Load the code\n\nWrite the address of your broker into the first line. Upload.\n',
          'main.ino': '#define BROKER_ADDRESS "your-broker"\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
      {
        title: 'settings that work as they are',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload the sketch.\n',
          'main.ino':
            '#define GREETING "hello"\n#define MODE "demo"\n#define STEP 5\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
    ],
    fails: [
      {
        title: 'a network that nobody is told to name',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nUpload the sketch.\n',
          'main.ino':
            '#include <WiFi.h>\n#define LAMP_NETWORK "your-network"\nvoid setup() { WiFi.begin(LAMP_NETWORK); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino', line: 2, words: 'LAMP_NETWORK' }],
      },
      {
        title: 'an address to put in, on a board that runs Python',
        files: {
          'guide.md': '# Night light\n\n## Load the code\n\nCopy the file to the board.\n',
          'main.py': 'import machine\n\nBROKER = "<your broker>"\nTOPIC = "lamp"\n\nprint(BROKER, TOPIC)\n',
        },
        expect: [{ file: 'main.py', line: 3, words: 'BROKER' }],
      },
    ],
  },
});

/** Values that ask for another: 'your-ssid', '<address>', 'changeme', 'put name here'. */
const asks =
  /^(?:<.+>|\[.+\]|.*(?<![a-z])your(?![a-z]).*|change[-_ ]?(?:me|this)|(?:put|enter|insert|fill|replace|write)[-_ ].+|.+[-_ ]here|x{3,}|\*{3,})$/i;

function isToFillIn({ kind, name, value }: CodeConstant): boolean {
  const text = value.replace(/^["']|["']$/g, '');
  return name !== null && kind === 'setting' && asks.test(text) && isPlaceholder(text);
}

/** The guide names the setting, its file, or the matter in words. */
function isExplained(prose: string, { name, place }: CodeConstant): boolean {
  const file = place.file.slice(place.file.lastIndexOf('/') + 1);
  const actual = file.replace(/[._-]?(?:example|sample|template)/i, '');
  const isOwnFile = /secret|config|setting|credential/i.test(file);
  if (name !== null && prose.includes(name)) return true;
  if (isOwnFile && (prose.includes(file) || prose.includes(actual))) return true;
  const sentences = prose.split(/(?<=[.!?])\s|\n/);
  const work = /\b(?:enter|edit|change|set|write|fill|replace|put|adapt|adjust|type|configure|your)\b/i;
  const words = nameWords(name ?? '').filter((word) => word.length >= 4);
  const matters = /ssid|wifi|wi_?fi|network|pass|psk/i.test(name ?? '')
    ? [...words, 'wi-?fi', 'network', 'ssid', 'credential']
    : words;
  return sentences.some(
    (sentence) => work.test(sentence) && matters.some((word) => new RegExp(`(?<!\\p{L})${word}`, 'iu').test(sentence)),
  );
}
