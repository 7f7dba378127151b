import type { TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const commandUncertain = defineCheck({
  id: 'command-uncertain',
  title: 'A command stands in the guide as it was typed.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A computer takes no command that is nearly right, and a beginner cannot tell which letter to change.',
  basis: 'common practice: commands are copied from the terminal in which they worked',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    for (const section of everySection(build)) {
      for (const { text, written, place, block } of sentencesIn(section)) {
        const command = /`([^`\n]*[^`\s][^`\n]*)`/u.exec(written)?.[1]?.trim() ?? codeBehind(section, block, text);
        const doubt = doubting.exec(text)?.[0] ?? '';
        if (doubt === '' || !isCommand(command, text)) continue;
        yield {
          subjects: [section.role === 'step' ? `step:${section.id}` : `file:${section.file}`],
          mark: command,
          sides: [place],
          basis: 'read',
          message: `The guide is not sure of the command ‘${command}’: it says ‘${doubt.trim()}’.`,
          consequence: 'A builder types it as it stands, and does not know what to change when it fails.',
          remedy: 'Write the command that worked, and say which words of it depend on the builder’s machine.',
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'a command for certain, and what comes out of it',
        files: {
          'guide.md':
            '# Lamp\n\n## Load it\n\nRun `make flash PORT=/dev/ttyUSB0`. You should see something like `42 bytes written`. Use a clip or similar to hold it.\n',
        },
      },
      {
        title: 'a value, and a name',
        files: {
          'guide.md':
            '# Lamp\n\n## Load it\n\nType `make flash`. The port will be something like `COM3`. The name should be `lamp`.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a command that looks like this, roughly',
        files: {
          'guide.md':
            '# Lamp\n\n## Load it\n\nOpen a terminal. The command should be something like `make flash PORT=lamp`.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'make flash' }],
      },
      {
        title: 'in a block of its own',
        files: {
          'guide.md':
            '# Lamp\n\n## Load it\n\nPlug it in. The command will look something like this:\n\n```\nloader --board lamp main.bin\n```\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'loader --board lamp' }],
      },
      {
        title: 'or similar',
        files: {
          'guide.md': '# Lamp\n\n## Load it\n\n1. Plug it in.\n2. Run `loader --board lamp main.py` or similar.\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'or similar' }],
      },
    ],
  },
});

const doubting =
  /\b(?:something (?:like|similar)|(?:might|may|could|should|would|will) (?:probably )?(?:look|be) (?:like|something|roughly)|along the lines of|or (?:something )?similar|or so|if I remember (?:right|correctly|well)|I (?:think|believe|guess))\b/iu;
const output = /\b(?:see|output|shows?|prints?|reads?|displays?|reports?|answers?|returns?|result)\b/iu;

/** The first line of the code that a sentence ending in a colon leads to. */
function codeBehind({ blocks }: Section, { span }: TextPlace, sentence: string): string {
  const next = blocks[blocks.findIndex(({ place }) => place.span[0] === span[0]) + 1];
  return /:\s*$/u.test(sentence) && next?.kind === 'code' ? (next.value.split('\n')[0] ?? '').trim() : '';
}

function isCommand(code: string, sentence: string): boolean {
  if (output.test(sentence)) return false;
  const isLong = /^[\w./~$-]+\s+\S/u.test(code);
  return (
    isLong && (/\b(?:commands?|run|type|enter|execute|call|invoke|use|try)\b/iu.test(sentence) || /\s--?\w/u.test(code))
  );
}
