import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { CodeConstant } from '#core/code.ts';
import type { Part, Ref } from '#core/part.ts';
import { netsOf } from '#rehearsal/nets.ts';
import { knownWires, nameWords } from '../controllerEnds.ts';
import { type CannotTell, defineCheck, type FindingDraft } from '../defineCheck.ts';
import table from '../knowledge/busAddresses.json';
import { listed } from '../say.ts';

export const addressUsedTwice = defineCheck({
  id: 'address-used-twice',
  title: 'No two devices on one bus answer to the same address.',
  weight: 'slows',
  audience: 'builder',
  why: 'Two devices of one address answer at once: readings of both are wrong, and the wiring looks right.',
  basis: 'I²C-bus specification UM10204: an address selects one device; addresses from data sheets, from memory',
  needs: { subject: ['code or wiring'], witnesses: [] },
  *run(judged) {
    if (hasSwitch(judged.build)) {
      yield { cannotTell: 'the bus is switched or there are several, so one address may serve twice' };
      return;
    }
    yield* inCode(judged.build);
    yield* onWires(judged);
  },
  examples: {
    passes: [
      {
        title: 'devices that can be told apart, and two names for one device',
        files: {
          'guide.md': '# Weather post\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nDS1,1,OLED display with SSD1306\n"U2, U3",2,BME280 module\n',
          'wiring.csv':
            'from,to,net\nU1.GPIO21,DS1.SDA,SDA\nU1.GPIO21,U2.SDA,SDA\nU1.GPIO21,U3.SDA,SDA\nU1.GPIO22,U2.SCL,SCL\n',
          'main.ino':
            '#include <Wire.h>\n#define OLED_ADDRESS 0x3C\nconst int DISPLAY_ADDRESS = 0x3C;\nconst int SENSOR_ADDRESS = 0x76;\nvoid setup() { Wire.beginTransmission(SENSOR_ADDRESS); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'one of the two is used, as the build is configured',
        files: {
          'guide.md': '# Weather post\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'main.ino':
            '#include <Wire.h>\n#ifdef INDOOR\n#define HUMIDITY_ADDRESS 0x40\n#else\n#define POWER_ADDRESS 0x40\n#endif\nvoid setup() { Wire.begin(); }\nvoid loop() {}\n',
        },
      },
      {
        title: 'a switch on the bus',
        outcome: 'cannot-tell',
        files: {
          'guide.md': '# Weather post\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nU4,1,TCA9548A bus multiplexer\n"U2, U3",2,TSL2591 light sensor\n',
          'wiring.csv': 'from,to,net\nU4.SD0,U2.SDA,\nU4.SD1,U3.SDA,\n',
        },
      },
    ],
    fails: [
      {
        title: 'two light sensors whose address cannot be changed',
        files: {
          'guide.md': '# Weather post\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv':
            'Reference,Quantity,Description\nU1,1,ESP32 development board\nU2,1,TSL2591 light sensor\nU3,1,TCS34725 colour sensor\n',
          'wiring.csv':
            'from,to,net\nU1.GPIO21,U2.SDA,SDA\nU1.GPIO21,U3.SDA,SDA\nU1.GPIO22,U2.SCL,SCL\nU1.GPIO22,U3.SCL,SCL\n',
        },
        expect: [{ file: 'wiring.csv', line: 2, words: '0x29' }],
      },
      {
        title: 'the code gives two devices one address',
        files: {
          'guide.md': '# Weather post\n\n## Wire it\n\n- Parts: U1\n\nSolder.\n',
          'parts.csv': 'Reference,Quantity,Description\nU1,1,ESP32 development board\n',
          'main.ino':
            '#include <Wire.h>\nconst int HUMIDITY_ADDRESS = 0x40;\nconst int POWER_ADDRESS = 0x40;\nvoid setup() { Wire.beginTransmission(HUMIDITY_ADDRESS); Wire.beginTransmission(POWER_ADDRESS); }\nvoid loop() {}\n',
        },
        expect: [{ file: 'main.ino', line: 2, words: '0x40' }],
      },
    ],
  },
});

/** A multiplexer, or a second bus: then one address may well be there twice. */
function hasSwitch(build: Build): boolean {
  return (
    build.parts.some(({ description }) => /multiplex|\bmux\b|tca9548|pca95\d\d|bus switch/i.test(description)) ||
    build.sources.some(({ file }) =>
      /\bWire1\b|\bTwoWire\b|tca9548|I2C\(\s*1|Soft(?:ware)?(?:I2C|Wire)/i.test(build.texts.get(file)?.text ?? ''),
    )
  );
}

/** Words that say of an address only that it is one. */
const idle = new Set(['address', 'addr', 'i2c', 'default', 'device', 'dev', 'slave', 'bus']);

function* inCode(build: Build): Iterable<FindingDraft | CannotTell> {
  const named = build.sources.flatMap(({ constants }) =>
    constants.filter(({ kind, name }) => kind === 'address' && name !== null),
  );
  for (const [at, one] of named.entries()) {
    const other = named
      .slice(at + 1)
      .find((two) => Number(two.value) === Number(one.value) && folderOf(two) === folderOf(one) && areTwo(one, two));
    if (other === undefined || isConditional(build, one) || isConditional(build, other)) continue;
    yield {
      subjects: [`code:${one.place.file}`],
      mark: `${one.value} ${other.name}`,
      sides: [one.place, other.place],
      message: `The code gives ${one.name} and ${other.name} the same address, ${one.value}.`,
      consequence: 'Two devices answer at once, and the readings of both are wrong.',
      remedy: 'Set one of the devices to another address where it has a choice, and write that into code and guide.',
    };
  }
}

/** Two names of one device share a word: OLED_ADDRESS and DISPLAY_ADDRESS do not tell two things. */
function areTwo(a: CodeConstant, b: CodeConstant): boolean {
  const [first, second] = [a, b].map(({ name }) => nameWords(name ?? '').filter((word) => !idle.has(word)));
  return (
    first !== undefined &&
    second !== undefined &&
    first.length > 0 &&
    second.length > 0 &&
    !first.some((word) => second.includes(word))
  );
}

/** A constant inside #if and #endif holds only for some builds. */
function isConditional({ texts }: Build, { place }: CodeConstant): boolean {
  const before = texts.get(place.file)?.text.slice(0, place.span[0]) ?? '';
  const opened = before.match(/^[ \t]*#[ \t]*if/gm)?.length ?? 0;
  const closed = before.match(/^[ \t]*#[ \t]*endif/gm)?.length ?? 0;
  // A header is guarded by one pair around the whole.
  const guard = /^\s*(?:\/\/[^\n]*\n|\/\*[\s\S]*?\*\/|\s)*#[ \t]*ifndef/.test(before) ? 1 : 0;
  return opened - closed > guard;
}

function folderOf({ place: { file } }: CodeConstant): string {
  return file.slice(0, file.lastIndexOf('/') + 1);
}

interface Device {
  readonly ref: Ref;
  readonly addresses: readonly string[];
}

function* onWires(judged: Judged): Iterable<FindingDraft> {
  const wires = knownWires(judged);
  const nets = netsOf(wires);
  const ends = wires.flatMap(({ from, to }) => [from, to]).filter(({ pin }) => /^SDA$/i.test(pin));
  const seen = new Set<Ref>();
  for (const end of ends) {
    const device = deviceOf(judged.build, end.ref);
    if (device === null || seen.has(end.ref)) continue;
    const onBus = new Set(nets.endsOn(end).map(({ ref }) => ref));
    const alike = [...onBus]
      .flatMap((ref) => deviceOf(judged.build, ref) ?? [])
      .filter(({ addresses }) => addresses.every((one) => device.addresses.includes(one)));
    for (const { ref } of alike) seen.add(ref);
    // As many devices as there are addresses can share a bus.
    if (alike.length <= device.addresses.length) continue;
    const places = wires
      .filter(({ from, to }) =>
        [from, to].some(({ ref, pin }) => /^SDA$/i.test(pin) && alike.some((one) => one.ref === ref)),
      )
      .flatMap(({ place }) => place ?? []);
    yield {
      subjects: [`part:${end.ref}`],
      mark: device.addresses.join(),
      sides: places,
      basis: 'read',
      message: `${listed(alike.map(({ ref }) => ref))} share a bus, and ${device.addresses.length === 1 ? 'each of them has the address' : 'between them have only the addresses'} ${listed(device.addresses)}.`,
      consequence: 'They answer at once, and the readings of all of them are wrong.',
      remedy: 'Put one of them on a bus of its own or behind a bus multiplexer, or choose another type.',
    };
  }
}

/** A part that answers on the bus, with its possible addresses; null where they are not known or can be moved. */
function deviceOf({ parts }: Build, ref: Ref): Device | null {
  const part: Part | undefined = parts.find(({ refs }) => refs.includes(ref));
  const text = `${part?.description ?? ''} ${part?.mpn ?? ''}`;
  const chips: readonly { chip: string; addresses: readonly string[]; movable?: boolean }[] = table.chips;
  const found = chips.filter(({ chip }) => new RegExp(`(?<![a-z0-9])(?:${chip})`, 'i').test(text));
  const only = found.length === 1 ? found[0] : undefined;
  return only === undefined || only.movable === true ? null : { ref, addresses: only.addresses };
}
