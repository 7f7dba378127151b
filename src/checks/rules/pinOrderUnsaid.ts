import type { Build } from '#core/build.ts';
import type { Part } from '#core/part.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { guideWords } from '../guideWords.ts';
import table from '../knowledge/lookAlikes.json';
import { partKind } from '../partKind.ts';
import { firstRows, fittedRows, rowName, rowWords } from '../partWords.ts';
import { listed } from '../say.ts';

export const pinOrderUnsaid = defineCheck({
  id: 'pin-order-unsaid',
  title: 'Where modules of one name come with different orders of pins, the guide tells the order.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A module with supply and ground the other way round dies at first power.',
  basis: 'common practice: families of modules that are sold in several pin orders',
  needs: { subject: ['parts', 'guide'], witnesses: [] },
  *run({ build }) {
    const guide = guideWords(build);
    const open = fittedRows(build).flatMap((part) => {
      const family = familyOf(part);
      return family === null || isSettled(part, family, guide) ? [] : [{ part, family }];
    });
    if (open.length === 0) return;
    yield {
      subjects: ['build:parts'],
      sides: firstRows(open.map(({ part }) => part)),
      basis: 'read',
      weight: open.every(({ part, family }) => isWiredByName(build, part, family, guide)) ? 'tidy' : 'slows',
      message: `${listed(open.map(({ part, family }) => `${rowName(part)} (${family.name}: ${family.differs})`))} ${
        open.length === 1 ? 'comes' : 'come'
      } in several pin orders, and the guide tells none.`,
      consequence: 'A builder with another make swaps supply and ground, and the module dies at first power.',
      remedy:
        'Write the order as printed on yours, such as ‘GND, VCC, SCL, SDA’, and to compare the names before soldering; best with a picture.',
    } satisfies FindingDraft;
  },
  examples: {
    passes: [
      {
        title: 'the guide names the order, a note in the list does, or a part number settles it',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the display\n\nThe pins of OLED1 are, from left to right, GND, VCC, SCL and SDA.\n',
          'parts.csv':
            'Reference,Quantity,Description,MPN,Note\nOLED1,1,OLED display 0.96 inch,,\nK1,1,Relay module,,"pins in the order VCC, GND, IN"\nU2,1,BME280 board,BP-280-6,\nU3,1,"OLED display, GND-VCC-SCL-SDA",,\nR1,1,Resistor 10k,,\n',
        },
      },
      {
        title: 'modules of one order, and a bare chip',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32-WROOM-32 module\nU2,1,74HC595\nU3,1,Servo driver board\nR1,1,Resistor 10k\n',
        },
      },
    ],
    fails: [
      {
        title: 'a display and a relay module of unknown order',
        files: {
          'guide.md': '# Night light\n\n## Fit the display\n\nPush the display into its socket.\n',
          'parts.csv':
            'Reference,Quantity,Description\nOLED1,1,OLED display 0.96 inch I2C\n,1,OLED cover\nK1,1,Relay module 5 V\nR1,1,Resistor 10k\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'small OLED display' }],
      },
      {
        title: 'wired by names, still without a word on the order',
        files: {
          'guide.md': '# Night light\n\n## Fit the sensor\n\nSolder the wires.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\nU2,1,BME280 sensor board\n',
          'wiring.csv': 'from,to,net\nU1.IO21,U2.SDA,SDA\nU1.IO22,U2.SCL,SCL\nU1.3V3,U2.VIN,3V3\nU1.GND,U2.GND,GND\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: 'pressure sensor board' }],
      },
    ],
  },
});

type Family = (typeof table.families)[number];

/** Covers, cables and sockets of a display are none. */
function familyOf(part: Part): Family | null {
  const kind = partKind(part);
  if (kind !== null && !['module', 'chip', 'motor', 'relay'].includes(kind)) return null;
  const words = `${part.description} ${part.cells.value?.quote ?? ''}`;
  return table.families.find(({ is }) => new RegExp(is, 'iu').test(words)) ?? null;
}

const orderWords =
  /\bpin ?(?:-)?(?:order|out)\b|\border of (?:the |its )?pins\b|\bsame (?:pins|order)\b|\b(?:names?|labels?|letters|marking) (?:that are |as )?(?:printed|on (?:the|your) (?:board|module))/iu;

/** A part number settles it; else the row or a line of the guide must name three pins, or speak of the order. */
function isSettled(part: Part, { pins, is }: Family, guide: string): boolean {
  if (part.mpn !== null) return true;
  const row = rowWords(part);
  if (orderWords.test(row) || namesPins(row, pins)) return true;
  const names = [...part.refs, ...(part.description.match(/[\p{L}\d-]{4,}/gu) ?? [])];
  return guide
    .split(/[\n.;]/u)
    .some(
      (line) =>
        namesPins(line, pins) ||
        (orderWords.test(line) && (new RegExp(is, 'iu').test(line) || names.some((name) => line.includes(name)))),
    );
}

function namesPins(text: string, pins: readonly string[]): boolean {
  return pinsIn(text, pins) >= 3;
}

function pinsIn(text: string, pins: readonly string[]): number {
  const words = text
    .toUpperCase()
    .replace(/(?<=[A-Z\d])[-–](?=[A-Z])/gu, ' ')
    .split(/[\s,;:|/()`*'"–—]+/u);
  return pins.filter((pin) => words.includes(pin)).length;
}

/** It is joined by wires that go by names: every pin in the wiring has one, or the text says where SDA goes. */
function isWiredByName({ connections }: Build, part: Part, { pins, is }: Family, guide: string): boolean {
  const wired = connections.flatMap(({ from, to }) =>
    [from, to].filter(({ ref }) => part.refs.includes(ref)).map(({ pin }) => pin),
  );
  if (wired.length > 0) return wired.every((pin) => !/^\d+$/u.test(pin));
  const speaksOf = new RegExp(is, 'iu');
  return guide.split(/[\n.;]/u).some((line) => speaksOf.test(line) && pinsIn(line, pins) > 0);
}
