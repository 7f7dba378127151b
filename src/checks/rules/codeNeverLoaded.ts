import type { Place } from '#core/place.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed } from '../say.ts';

export const codeNeverLoaded = defineCheck({
  id: 'code-never-loaded',
  title: 'The guide says when the code goes on to the board.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A builder who has never loaded code does not know that the thing needs any, and holds a dead board at the end.',
  basis: 'common practice: hold the end of the steps against the code folder',
  needs: { subject: ['steps', 'code'], witnesses: [] },
  rehearsal: true,
  *run({ build, ledger }) {
    for (const stop of ledger.stops) {
      if (stop.kind !== 'code-never-loaded') continue;
      const steps = build.instructions.sections.filter(({ role }) => role === 'step');
      yield {
        subjects: [`file:${stop.paths[0] ?? ''}`],
        sides: [
          ...stop.paths.slice(0, 3).map((file): Place => ({ kind: 'file', file })),
          ...steps.slice(-1).map(({ place }) => place),
        ],
        message: `The folder holds code (${listed(stop.paths)}); no step and no word of the guide loads it.`,
        consequence: 'A builder ends with a board that does nothing.',
        remedy: 'Add a step that loads it, with ‘Code: …’ and the board it goes on.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'loaded by a fact',
        files: {
          'guide.md': '# Night light\n\n## Load it\n\n- Code: firmware/main.cpp → U1\n\nWait.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'firmware/main.cpp': '#include <Arduino.h>\nvoid setup() { pinMode(5, OUTPUT); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'spoken of anywhere',
        files: {
          'guide.md': '# Night light\n\nThe firmware comes first.\n\n## Solder it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'firmware/main.cpp': '#include <Arduino.h>\nvoid setup() { pinMode(5, OUTPUT); }\nvoid loop() {}\n',
        },
      },
    ],
    fails: [
      {
        title: 'a guide that ends with a soldered board',
        files: {
          'guide.md': '# Night light\n\n## Solder it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'firmware/main.cpp': '#include <Arduino.h>\nvoid setup() { pinMode(5, OUTPUT); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'firmware/main.cpp', words: 'main.cpp' }],
      },
      {
        title: 'two files of one program',
        files: {
          'guide.md': '# Night light\n\n## Solder it\n\n- Parts: U1\n\nSolder.\n\n## Close it\n\nScrew.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'lamp/lamp.ino': '#include "glow.h"\nvoid setup() { pinMode(5, OUTPUT); }\nvoid loop() { glow(); }\n',
          'lamp/glow.h': 'inline void glow() { digitalWrite(5, HIGH); }\n',
        },
        expect: [{ file: 'guide.md', line: 9, words: 'no step' }],
      },
    ],
  },
});
