import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { sentencesIn } from '../sentencesIn.ts';

export const padsNotNamed = defineCheck({
  id: 'pads-not-named',
  title: 'Jumper pads that are to be bridged or cut are named.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A board has dozens of pads that lie side by side; bridging the wrong ones shorts the supply or sets another address.',
  basis: 'common practice: pads go by the label printed beside them',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    for (const section of everySection(build)) {
      for (const { text, written, after, place } of sentencesIn(section)) {
        const match = acts.exec(text);
        if (match === null || named.test(`${written} ${after}`)) continue;
        yield {
          subjects: [section.role === 'step' ? `step:${section.id}` : `file:${section.file}`],
          mark: `${section.id}-pads`,
          sides: [place],
          basis: 'read',
          message: `The guide says ‘${match[0].trim()}’, and not which: no label, and no word on where they lie.`,
          consequence: 'A builder bridges other pads, and may short the supply.',
          remedy: 'Give the label that is printed beside them, and what they lie next to.',
        };
      }
    }
  },
  examples: {
    passes: [
      {
        title: 'by label, by place, by what they join',
        files: {
          'guide.md':
            '# Lamp\n\n## Set it\n\nBridge the jumper pads JP1 and JP2. Cut the jumper marked ‘5V’. Close the solder jumper next to the socket. Bridge the two pads between the lamp and the edge. Bridge the `ADDR` pads.\n',
        },
      },
      {
        title: 'pads that are merely soldered, and jumpers that are wires',
        files: {
          'guide.md':
            '# Lamp\n\n## Solder it\n\nSolder the pads from below. Connect the jumper wires. Do not bridge neighbouring pads with solder.\n',
        },
      },
    ],
    fails: [
      {
        title: 'four jumpers, somewhere',
        files: {
          'guide.md': '# Lamp\n\n## Set it\n\nBridge the 3 jumper pads on the upper side. They select the lamp.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'Bridge the 3 jumper pads' }],
      },
      {
        title: 'a jumper to cut',
        files: { 'guide.md': '# Lamp\n\n## Set it\n\nSolder D1. Then cut the solder jumper with a knife.\n' },
        expect: [{ file: 'guide.md', line: 5, words: 'cut the solder jumper' }],
      },
    ],
  },
});

const acts =
  /\b(?:bridge|short|close|cut|open|join)\b (?:together )?(?:all |both |the |these |those )*(?:\d+ |two |three |four |five |six )?(?:(?:small |little )?(?:solder(?:ing)? |jumper )(?:jumpers?|pads?|bridges?)|jumpers?(?! (?:wires?|cables?|leads?)))/iu;
const named =
  /\b(?:S?JP?|SB|LK|R|P|J)\d+\b|[`‘’“”"]|\b[A-Z][A-Z0-9_]{1,}[0-9_]|\b(?:ADDR|ADR|VCC|GND|SDA|SCL|PWR|LED|RST|AREF|INT|CS)\b|\b(?:marked|labell?ed|named|called|between|next to|beside|near|above|below|under|left|right|closest|around|behind|in front)\b/u;
