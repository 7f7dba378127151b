import type { Build } from '#core/build.ts';
import type { CodeConstant } from '#core/code.ts';
import type { Part } from '#core/part.ts';
import { type Chip, chipNamedIn, chipsOf, numberOf } from '../busAddresses.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { guideWords } from '../guideWords.ts';
import { fittedRows, rowName, rowWords } from '../partWords.ts';
import { listed } from '../say.ts';

export const busAddress = defineCheck({
  id: 'bus-address',
  title: 'The address in the code is one that the listed chip can have, and the guide says which it must have.',
  weight: 'slows',
  audience: 'builder',
  why: 'Boards with the same chip leave the shop with different addresses, and the code then finds nothing on the bus.',
  basis: 'NXP UM10204 for addresses; published lists of addresses by chip',
  needs: { subject: ['parts', 'code'], witnesses: [] },
  *run({ build }) {
    const listedChips = fittedRows(build).flatMap((part) => chipsOf(rowWords(part)).map((chip) => ({ part, chip })));
    const told = toldWords(build);
    for (const constant of addressesIn(build)) {
      const named = chipNamedIn(lineOf(build, constant));
      const row = listedChips.find(({ chip }) => named !== null && chip === named);
      if (named !== null && row !== undefined && !canBe(named, constant)) yield impossible(constant, row);
      else yield* unsaid(constant, listedChips, told);
    }
  },
  examples: {
    passes: [
      {
        title: 'the guide says which of two, and what leaves the shop like this needs no word',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the sensor\n\nThe BME280 must be set to address 0x76: leave its pad SDO open.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU2,1,Sensor board BME280\nU3,1,OLED display SSD1306\nU4,1,Converter board ADS1115\n',
          'light/light.ino':
            '#include <Wire.h>\n#define BME280_ADDR 0x76\n#define OLED_ADDR 0x3C\nvoid setup() { Wire.begin(); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'an address of a chip that no table holds, and one that two listed chips can have',
        files: {
          'guide.md': '# Night light\n\n## Fit the sensor\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU2,1,Clock board DS3231\nU3,1,Sensor board MPU6050\nU5,1,Board XY7788\n',
          'light/light.ino':
            '#include <Wire.h>\n#define XY_ADDR 0x2E\n#define CLOCK_ADDR 0x68\nvoid setup() { Wire.begin(); }\nvoid loop() {}\n',
        },
      },
    ],
    fails: [
      {
        title: 'a display cannot be there',
        files: {
          'guide.md': '# Night light\n\n## Fit the display\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nU3,1,OLED display SSD1306\nR1,1,Resistor 10k\n',
          'light/light.ino':
            '#include <Wire.h>\n#define SSD1306_ADDR 0x2C\nvoid setup() { Wire.begin(); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'light/light.ino', line: 2, words: '0x2C' }],
      },
      {
        title: 'boards leave the shop with either address, or with the other one',
        files: {
          'guide.md': '# Night light\n\n## Fit the sensor\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU2,1,Sensor board BME280\nU4,1,Converter board ADS1115\nR1,1,Resistor 10k\n',
          'light/light.ino':
            '#include <Wire.h>\n#define BME280_ADDR 0x76\n#define ADC_ADDR 0x49\nvoid setup() { Wire.begin(); }\nvoid loop() {}\n',
        },
        expect: [
          { file: 'light/light.ino', line: 2, words: '0x76 or 0x77' },
          { file: 'light/light.ino', line: 3, words: '0x48' },
        ],
      },
    ],
  },
});

interface ListedChip {
  readonly part: Part;
  readonly chip: Chip;
}

function addressesIn({ sources }: Build): CodeConstant[] {
  return sources.flatMap(({ constants }) => constants.filter(({ kind }) => kind === 'address'));
}

/** The line of code that an address stands on, without its comment. */
function lineOf(build: Build, { place }: CodeConstant): string {
  const text = build.texts.get(place.file)?.text ?? '';
  const start = text.lastIndexOf('\n', place.span[0] - 1) + 1;
  const end = text.indexOf('\n', place.span[1]);
  const line = text.slice(start, end < 0 ? undefined : end);
  return line.replace(place.file.endsWith('.py') ? /#.*$/u : /\/\/.*$/u, '');
}

/** Addresses with the bit for reading and writing are twice as large. */
function canBe({ addresses }: Chip, { value }: CodeConstant): boolean {
  const n = numberOf(value);
  return n === null || addresses.some((address) => address === n || address * 2 === n);
}

function impossible({ value, place }: CodeConstant, { part, chip }: ListedChip): FindingDraft {
  return {
    subjects: [`part:${part.id}`],
    mark: value,
    sides: [place, part.place],
    basis: 'read',
    message: `The code speaks to ${chip.name} at ${value}; ${rowName(part)}, a ${chip.name}, answers at ${written(chip.addresses)}.`,
    consequence: 'A builder wires everything right and the code finds nothing at that address.',
    remedy: 'Correct the address in the code, or name the chip that is really used.',
  };
}

function* unsaid(constant: CodeConstant, all: readonly ListedChip[], told: string): Iterable<FindingDraft> {
  const able = all.filter(({ chip }) => canBe(chip, constant));
  const [only] = able;
  if (only === undefined || new Set(able.map(({ chip }) => chip)).size > 1) return;
  const { part, chip } = only;
  const n = numberOf(constant.value);
  if (chip.addresses.length < 2 || n === null || chip.ships === n || !chip.addresses.includes(n)) return;
  if (new RegExp(`0x${n.toString(16)}(?![0-9a-f])`, 'iu').test(told)) return;
  yield {
    subjects: [`part:${part.id}`],
    mark: constant.value,
    sides: [constant.place, part.place],
    basis: 'read',
    message:
      chip.ships === null
        ? `The code speaks to ${constant.value}; boards with ${chip.name} (${rowName(part)}) are set to ${written(chip.addresses)}, and neither guide nor list says which is needed.`
        : `The code speaks to ${constant.value}; boards with ${chip.name} (${rowName(part)}) are sold set to ${hex(chip.ships)}, and neither guide nor list says to change it.`,
    consequence: 'A builder with the other address sees no reading and looks for a fault in the wiring.',
    remedy: `Write which address ${rowName(part)} must have, and how it is set.`,
  };
}

function toldWords(build: Build): string {
  const wiring = build.connections.map(({ note }) => note ?? '');
  return [guideWords(build), ...build.parts.map(rowWords), ...wiring].join('\n');
}

function written(addresses: readonly number[]): string {
  return addresses.length > 3
    ? `${hex(addresses[0] ?? 0)} to ${hex(addresses.at(-1) ?? 0)}`
    : listed(addresses.map(hex)).replace(' and ', ' or ');
}

function hex(n: number): string {
  return `0x${n.toString(16).toUpperCase().padStart(2, '0')}`;
}
