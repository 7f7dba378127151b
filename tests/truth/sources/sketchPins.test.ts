import { describe, expect, it } from 'vitest';
import { pinsIn, readFiles } from './readFiles.ts';

// Signatures and argument orders: language reference, docs.arduino.cc; cores for ESP32 and RP2040; headers of the
// libraries named. See SOURCE.md.

function inSetup(body: string, before = ''): Promise<string[]> {
  return pinsIn('lamp.ino', `${before}\nvoid setup() {\n  ${body}\n}\nvoid loop() {}\n`);
}

describe('pin-taking calls of sketches', () => {
  it.each([
    ['pinMode(5, OUTPUT);', ['- 5 output -']],
    ['pinMode(5, INPUT);', ['- 5 input -']],
    ['pinMode(5, INPUT_PULLUP);', ['- 5 input -']],
    ['digitalWrite(13, HIGH);', ['- 13 output -']],
    ['int on = digitalRead(2);', ['- 2 input -']],
    ['int level = analogRead(A0);', ['- A0 analogue-in -']],
    ['int level = analogRead(0);', ['- 0 analogue-in -']],
    ['analogWrite(9, 128);', ['- 9 pwm -']],
    ['attachInterrupt(digitalPinToInterrupt(2), onPress, FALLING);', ['- 2 interrupt -']],
    ['tone(8, 440);', ['- 8 pwm -']],
    ['long width = pulseIn(7, HIGH);', ['- 7 input -']],
    ['shiftOut(11, 12, MSBFIRST, 0xF0);', ['- 11 output -', '- 12 output -']],
    ['ledcAttach(18, 5000, 8);', ['- 18 pwm -']],
    ['ledcAttachPin(18, 0);', ['- 18 pwm -']],
    ['Wire.begin(21, 22);', ['- 21 i2c-sda Wire', '- 22 i2c-scl Wire']],
    ['Wire.setSDA(4); Wire.setSCL(5);', ['- 4 i2c-sda Wire', '- 5 i2c-scl Wire']],
    ['SPI.begin(18, 19, 23, 5);', ['- 18 spi SPI', '- 19 spi SPI', '- 23 spi SPI', '- 5 spi SPI']],
    ['Serial1.begin(9600, SERIAL_8N1, 16, 17);', ['- 16 uart Serial1', '- 17 uart Serial1']],
    ['gpio_set_direction(GPIO_NUM_4, GPIO_MODE_OUTPUT);', ['- GPIO_NUM_4 output -']],
    ['digitalWrite(LED_BUILTIN, LOW);', ['- LED_BUILTIN output -']],
    ['pinMode(PA5, OUTPUT);', ['- PA5 output -']],
    ['pinMode(D5, OUTPUT);', ['- D5 output -']],
  ])('%s', async (body, expected) => {
    expect(await inSetup(body)).toEqual(expected);
  });

  it.each([
    ['SoftwareSerial gps(10, 11);', ['- 10 uart gps', '- 11 uart gps']],
    [
      'LiquidCrystal lcd(12, 11, 5, 4, 3, 2);',
      ['- 12 output lcd', '- 11 output lcd', '- 5 output lcd', '- 4 output lcd', '- 3 output lcd', '- 2 output lcd'],
    ],
    ['Adafruit_NeoPixel strip(12, 6, NEO_GRB + NEO_KHZ800);', ['- 6 led-strip strip']],
    ['Adafruit_NeoPixel strip = Adafruit_NeoPixel(12, 6, NEO_GRB + NEO_KHZ800);', ['- 6 led-strip strip']],
    ['NeoPixelBus<NeoGrbFeature, Neo800KbpsMethod> strip(12, 6);', ['- 6 led-strip strip']],
    ['DHT climate(4, DHT22);', ['- 4 input climate']],
    ['OneWire bus(3);', ['- 3 other bus']],
    ['Encoder knob(2, 3);', ['- 2 encoder knob', '- 3 encoder knob']],
    ['DHT climate{4, DHT22};', ['- 4 input climate']],
    ['DHT *climate = new DHT(4, DHT22);', ['- 4 input climate']],
    [
      'U8G2_SSD1306_128X64_NONAME_F_SW_I2C oled(U8G2_R0, 7, 6, U8X8_PIN_NONE);',
      ['- 7 i2c-scl oled', '- 6 i2c-sda oled'],
    ],
  ])('%s', async (line, expected) => {
    expect((await pinsIn('lamp.ino', `${line}\nvoid setup() {}\n`)).toSorted()).toEqual(expected.toSorted());
  });

  it('takes what looks like a function declaration as an object whose arguments are constants', async () => {
    const text = '#define DHT_PIN 4\n#define DHT_TYPE DHT22\nDHT climate(DHT_PIN, DHT_TYPE);\n';
    expect(await pinsIn('lamp.ino', text)).toEqual(['DHT_PIN 4 input climate']);
  });

  it('knows a servo by the class of the object, not by the name of the method', async () => {
    expect(await inSetup('arm.attach(9);', 'Servo arm;')).toEqual(['- 9 servo arm']);
    expect(await inSetup('arm.attach(9);', 'Tentacle arm;')).toEqual([]);
  });

  it('finds the data pin between the angle brackets, and the clock of strips that have one', async () => {
    const before = 'CRGB ring[12];';
    expect(await inSetup('FastLED.addLeds<WS2812B, 5, GRB>(ring, 12);', before)).toEqual(['- 5 led-strip ring']);
    expect(await inSetup('FastLED.addLeds<NEOPIXEL, 5>(ring, 12);', before)).toEqual(['- 5 led-strip ring']);
    expect(await inSetup('FastLED.addLeds<APA102, 5, 18, BGR>(ring, 12);', before)).toEqual([
      '- 5 led-strip ring',
      '- 18 led-strip ring',
    ]);
  });

  it('does not mistake functions and classes of the build for those of the table', async () => {
    expect(await inSetup('tone(8, 440);', 'void tone(int volume, int length) {}')).toEqual([]);
    expect(await pinsIn('a.ino', 'class Encoder { public: Encoder(int a, int b) {} };\nEncoder knob(2, 3);')).toEqual(
      [],
    );
  });

  it('reads one argument of Wire.begin as an address on the bus, not as a pin', async () => {
    expect(await inSetup('Wire.begin(8);')).toEqual([]);
  });

  it('reads a bare number in attachInterrupt as the number of an interrupt, and a named pin as a pin', async () => {
    expect(await inSetup('attachInterrupt(0, onPress, FALLING);')).toEqual([]);
    expect(await inSetup('attachInterrupt(BUTTON, onPress, FALLING);', '#define BUTTON 4')).toEqual([
      'BUTTON 4 interrupt -',
    ]);
  });

  it('gives no pin for -1 and for names that say none', async () => {
    expect(await pinsIn('a.ino', 'Adafruit_SSD1306 oled(128, 64, &Wire, -1);')).toEqual([]);
  });
});

describe('ways to write a pin', () => {
  it.each([
    ['const int LAMP = 5;', ['LAMP 5 output -']],
    ['constexpr uint8_t LAMP{5};', ['LAMP 5 output -']],
    ['static const byte LAMP = 5;', ['LAMP 5 output -']],
    ['const int LAMP(5);', ['LAMP 5 output -']],
    ['int LAMP = 5;', ['LAMP 5 output -']],
    ['#define LAMP 5', ['LAMP 5 output -']],
    ['#define LAMP (5) // the big one', ['LAMP 5 output -']],
    ['#define LAMP 5 /* the big one */', ['LAMP 5 output -']],
    ['#define LAMP GPIO_NUM_4', ['LAMP GPIO_NUM_4 output -']],
    ['#define LAMP ((gpio_num_t)4)', ['LAMP 4 output -']],
    ['#define LAMP A0', ['LAMP A0 output -']],
    ['#define OUT_A 5\n#define LAMP OUT_A', ['LAMP 5 output -']],
    ['enum { LAMP = 5 };', ['LAMP 5 output -']],
    ['enum { MOTOR = 4, LAMP };', ['LAMP 5 output -']],
    ['const gpio_num_t LAMP = static_cast<gpio_num_t>(5);', ['LAMP 5 output -']],
    ['const uint8_t LAMP PROGMEM = 5;', ['LAMP 5 output -']],
  ])('%s', async (line, expected) => {
    expect(await inSetup('pinMode(LAMP, OUTPUT);', line)).toEqual(expected);
  });

  it.each([
    ['namespace pins { constexpr int lamp = 5; }', 'pins::lamp'],
    ['struct Pins { static constexpr int lamp = 5; };', 'Pins::lamp'],
    ['enum class Pin : uint8_t { lamp = 5 };', '(uint8_t)Pin::lamp'],
    ['enum class Pin : uint8_t { lamp = 5 };', 'static_cast<uint8_t>(Pin::lamp)'],
    ['struct Pins { int lamp = 5; } pins;', 'pins.lamp'],
    ['struct Pins { int fan; int lamp; }; const Pins pins = {4, 5};', 'pins.lamp'],
    ['struct Pins { int fan, lamp; }; const Pins pins = {.fan = 4, .lamp = 5};', 'pins.lamp'],
    ['typedef struct { int fan; int lamp; } Pins; Pins pins = {4, 5};', 'pins.lamp'],
    ['const byte pins[] = {4, 5};', 'pins[1]'],
  ])('%s used as %s', async (line, used) => {
    const pins = await inSetup(`pinMode(${used}, OUTPUT);`, line);
    expect(pins.map((pin) => pin.split(' ').slice(1).join(' '))).toContain('5 output -');
    expect(pins.filter((pin) => pin.includes(' output '))).toHaveLength(1);
  });

  it('takes every element of an array that a loop runs through', async () => {
    const array = 'static const byte pins[] = {2, 3};';
    const expected = ['pins[0] 2 output -', 'pins[1] 3 output -'];
    expect(await inSetup('for (int i = 0; i < 2; i++) pinMode(pins[i], OUTPUT);', array)).toEqual(expected);
    expect(await inSetup('for (byte p : pins) { pinMode(p, OUTPUT); }', array)).toEqual(expected);
    expect(await inSetup('for (auto p : pins) pinMode(p, OUTPUT);', 'std::array<int, 2> pins = {2, 3};')).toEqual(
      expected,
    );
  });

  it('takes every field of an array of records', async () => {
    const records = 'struct Motor { int in1, in2; };\nMotor motors[] = {{3, 4}, {5, 6}};';
    const pins = await inSetup('for (auto &m : motors) { pinMode(m.in1, OUTPUT); }', records);
    expect(pins.map((pin) => pin.split(' ')[1])).toEqual(['3', '5']);
    const byIndex = await inSetup('for (int i = 0; i < 2; i++) { pinMode(motors[i].in2, OUTPUT); }', records);
    expect(byIndex.map((pin) => pin.split(' ')[1])).toEqual(['4', '6']);
  });

  it('counts through a loop from its first number to its last', async () => {
    expect(await inSetup('for (int p = 2; p <= 4; p++) pinMode(p, OUTPUT);')).toEqual([
      '- 2 output -',
      '- 3 output -',
      '- 4 output -',
    ]);
    expect(await inSetup('for (int p = 2; p < 4; ++p) pinMode(p, OUTPUT);')).toHaveLength(2);
    expect(await inSetup('for (int p = 4; p >= 2; p--) pinMode(p, OUTPUT);')).toHaveLength(3);
    expect(
      await inSetup('for (int p = low; p <= high; p++) pinMode(p, OUTPUT);', 'const int low = 2, high = 4;'),
    ).toHaveLength(3);
  });

  it('gives no pin for a loop that counts in another way', async () => {
    expect(await inSetup('for (int p = 2; p < 9; p += 2) pinMode(p, OUTPUT);')).toEqual([]);
    expect(await inSetup('for (int p = 2; p < count(); p++) pinMode(p, OUTPUT);')).toEqual([]);
  });

  it('follows a pin through the functions that it is handed to', async () => {
    const text = `
      const int LAMP = 5;
      void prepare(int pin, int level) { pinMode(pin, OUTPUT); digitalWrite(pin, level); }
      void setup() { prepare(LAMP, HIGH); prepare(6, LOW); }`;
    expect(await pinsIn('a.ino', text)).toEqual(['LAMP 5 output -', '- 6 output -']);
  });

  it('follows a pin through the constructor of a class of the build', async () => {
    const text = `
      class Knob {
       public:
        Knob(uint8_t pin) : pin_(pin) {}
        void begin() { pinMode(pin_, INPUT_PULLUP); }
       private:
        uint8_t pin_;
      };
      Knob left(7);
      Knob right{8};
      Knob *spare = new Knob(9);`;
    const pins = await pinsIn('a.ino', text);
    expect(pins.map((pin) => pin.split(' ').slice(1, 3).join(' '))).toEqual(['7 input', '8 input', '9 input']);
  });

  it('does not take a parameter for a global constant of the same name', async () => {
    const text = 'const int pin = 5;\nvoid blink(int pin) { digitalWrite(pin, HIGH); }\nvoid setup() { blink(3); }';
    const { sources } = await readFiles({ 'a.ino': text });
    expect(sources[0]?.pins.map(({ pin, uses }) => `${pin} ${uses.join('+')}`)).toEqual(['5 named', '3 output']);
  });

  it('keeps a constant that is only named like a pin, and no number that only sounds so', async () => {
    const text = [
      'const int BUZZER_PIN = 8;',
      '#define I2C_SDA 21',
      'const int NUM_PINS = 4;',
      'const int SPIN_TIME = 30;',
      'const int SIM_PIN = 1234;',
      'const int PIN_COUNT = 3;',
      'const int buttonPin = 2;',
    ].join('\n');
    expect(await pinsIn('a.ino', text)).toEqual(['BUZZER_PIN 8 named -', 'I2C_SDA 21 named -', 'buttonPin 2 named -']);
  });
});

describe('places of pins', () => {
  it('points at the value, and at the calls that take it', async () => {
    const text = '#define LAMP 5 // note\nvoid setup() {\n  pinMode(LAMP, OUTPUT);\n  digitalWrite(LAMP, HIGH);\n}\n';
    const { sources } = await readFiles({ 'a.ino': text });
    const [pin] = sources[0]?.pins ?? [];
    expect(pin?.place).toMatchObject({ file: 'a.ino', line: 1, column: 14, quote: '5' });
    expect(pin?.usedAt.map(({ line, quote }) => [line, quote])).toEqual([
      [3, 'pinMode(LAMP, OUTPUT)'],
      [4, 'digitalWrite(LAMP, HIGH)'],
    ]);
  });

  it('takes the same bare number twice in a file for one pin', async () => {
    const { sources } = await readFiles({ 'a.ino': 'void setup() { pinMode(5, OUTPUT); digitalWrite(5, HIGH); }' });
    expect(sources[0]?.pins).toHaveLength(1);
    expect(sources[0]?.pins[0]?.usedAt).toHaveLength(2);
  });
});

describe('pins across the files of a build', () => {
  it('states a pin of a header in the header, used where it is used', async () => {
    const { sources, problems } = await readFiles({
      'src/main.cpp': '#include <Arduino.h>\n#include "pins.h"\nvoid setup() { pinMode(LAMP_PIN, OUTPUT); }',
      'include/pins.h': '#pragma once\n#define LAMP_PIN 5\n',
    });
    expect(problems).toEqual([]);
    expect(sources.map(({ file, pins }) => [file, pins.length])).toEqual([
      ['src/main.cpp', 0],
      ['include/pins.h', 1],
    ]);
    const [pin] = sources[1]?.pins ?? [];
    expect(pin?.place).toMatchObject({ file: 'include/pins.h', line: 2, quote: '5' });
    expect(pin?.usedAt.map(({ file, line }) => [file, line])).toEqual([['src/main.cpp', 3]]);
    expect(pin?.uses).toEqual(['output']);
  });

  it('joins the tabs of a sketch', async () => {
    const { sources } = await readFiles({
      'lamp/lamp.ino': 'const int LAMP = 5;\nvoid setup() { prepare(); }',
      'lamp/light.ino': 'void prepare() { pinMode(LAMP, OUTPUT); }',
    });
    expect(sources[0]?.pins[0]).toMatchObject({ pin: '5', uses: ['output'] });
    expect(sources[0]?.pins[0]?.usedAt[0]?.file).toBe('lamp/light.ino');
  });

  it('does not join the tabs of another sketch', async () => {
    const { sources } = await readFiles({
      'near/near.ino': 'void setup() { pinMode(LAMP, OUTPUT); }',
      'near/pins.ino': 'const int LAMP = 5;',
      'far/far.ino': 'void setup() { pinMode(LAMP, OUTPUT); }',
      'far/pins.ino': 'const int LAMP = 7;',
    });
    expect(sources.map(({ pins }) => pins.map(({ pin, usedAt }) => `${pin} ${usedAt[0]?.file}`))).toEqual([
      [],
      ['5 near/near.ino'],
      [],
      ['7 far/far.ino'],
    ]);
  });

  it('keeps two sketches with pins of the same name apart', async () => {
    const sketch = '#include "pins.h"\nvoid setup() { pinMode(LAMP, OUTPUT); }';
    const { sources } = await readFiles({
      'near/near.ino': sketch,
      'near/pins.h': '#define LAMP 5',
      'far/far.ino': sketch,
      'far/pins.h': '#define LAMP 7',
    });
    const pins = sources.flatMap(({ pins: found }) => found);
    expect(pins.map(({ pin, usedAt }) => [pin, usedAt.map(({ file }) => file)])).toEqual([
      ['5', ['near/near.ino']],
      ['7', ['far/far.ino']],
    ]);
  });

  it('finds the value of an extern constant in the file that defines it', async () => {
    const { sources, problems } = await readFiles({
      'pins.h': 'extern const int LAMP;',
      'pins.cpp': '#include "pins.h"\nconst int LAMP = 5;',
      'main.cpp': '#include "pins.h"\nvoid setup() { pinMode(LAMP, OUTPUT); }',
    });
    expect(problems).toEqual([]);
    expect(sources[1]?.pins[0]).toMatchObject({ pin: '5', uses: ['output'] });
  });

  it('finds it where the file itself declares the constant', async () => {
    const { sources } = await readFiles({
      'pins.cpp': 'const int LAMP = 5;',
      'main.cpp': 'extern const int LAMP;\nvoid setup() { pinMode(LAMP, OUTPUT); }',
    });
    expect(sources[0]?.pins[0]).toMatchObject({ pin: '5', uses: ['output'] });
  });

  it('says when no file tells which pin a call takes', async () => {
    const { problems, sources } = await readFiles({
      'a.ino': '#include "pins.h"\nvoid setup() { pinMode(LAMP, OUTPUT); }',
    });
    expect(sources[0]?.pins).toEqual([]);
    expect(problems).toHaveLength(1);
    expect(problems[0]?.message).toContain('LAMP');
    expect(problems[0]?.place).toMatchObject({ file: 'a.ino', line: 2, quote: 'LAMP' });
  });
});

describe('code that is not compiled', () => {
  it.each([
    ['a comment', '// #define OLD_PIN 4\n/* const int OLD_PIN = 4; */'],
    ['#if 0', '#if 0\nconst int OLD_PIN = 4;\n#endif'],
    ['#if false', '#if false\nconst int OLD_PIN = 4;\n#endif'],
    ['the other branch of #if 1', '#if 1\n#else\nconst int OLD_PIN = 4;\n#endif'],
    ['a switch set to 0 in the file', '#define BOARD_B 0\n#if BOARD_B\nconst int OLD_PIN = 4;\n#endif'],
    ['a switch behind comment signs', '//#define BOARD_B\n#ifdef BOARD_B\nconst int OLD_PIN = 4;\n#endif'],
    ['#ifndef of what is defined', '#define BOARD_A\n#ifndef BOARD_A\nconst int OLD_PIN = 4;\n#endif'],
    [
      'an #elif after a branch that holds',
      '#define BOARD 1\n#if BOARD == 1\n#elif BOARD == 2\nconst int OLD_PIN = 4;\n#endif',
    ],
    ['0 and anything', '#if 0 && defined(X)\nconst int OLD_PIN = 4;\n#endif'],
  ])('is passed over: %s', async (_, text) => {
    expect(await pinsIn('a.ino', `${text}\nconst int LAMP_PIN = 5;`)).toEqual(['LAMP_PIN 5 named -']);
  });

  it('keeps both branches where the file alone does not tell', async () => {
    const text = '#ifdef ESP32\n#define LAMP 4\n#else\n#define LAMP 5\n#endif\nvoid setup() { pinMode(LAMP, OUTPUT); }';
    expect(await pinsIn('a.ino', text)).toEqual(['LAMP 4 output -', 'LAMP 5 output -']);
  });

  it('reads a header between its guards', async () => {
    expect(await pinsIn('pins.h', '#ifndef PINS_H\n#define PINS_H\n#define LAMP_PIN 5\n#endif\n')).toEqual([
      'LAMP_PIN 5 named -',
    ]);
  });
});
