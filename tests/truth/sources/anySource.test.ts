import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Place } from '../../../src/core/place.ts';
import { readFiles } from './readFiles.ts';

const sketch = `#include <FastLED.h>
#include "pins.h"
#define NUM_LEDS 12 // ring
const char* ssid = "your-ssid";
struct Motor { int in1, in2; };
Motor motors[] = {{3, 4}, {5, 6}};
enum Pins : uint8_t { LAMP = 5, FAN };
#if USE_FAN
Servo arm;
#else
LiquidCrystal lcd(12, 11, 5, 4, 3, 2);
#endif
class Knob { public: Knob(int p) : pin(p) { pinMode(pin, INPUT_PULLUP); } int pin; };
Knob left(7);
void setup() {
  for (int i = 0; i < 2; i++) { pinMode(motors[i].in1, OUTPUT); }
  FastLED.addLeds<WS2812B, LAMP, GRB>(leds, NUM_LEDS);
  Wire.begin(21, 22);
  WiFi.begin(ssid, "changeme");
  attachInterrupt(digitalPinToInterrupt(left.pin), []() { digitalWrite(FAN, HIGH); }, RISING);
}
`;

const module = `import board, digitalio
from machine import Pin, I2C
LED_PIN = const(5)
KEYS = [2, 3]
class Lamp:
    def __init__(self, pin, *, level=0):
        self.out = Pin(pin, Pin.OUT)
lamp = Lamp(LED_PIN)
keys = [Pin(p, Pin.IN) for p in KEYS]
i2c = I2C(0, scl=Pin(1), sda=Pin(0))
led = digitalio.DigitalInOut(board.D13)
led.direction = digitalio.Direction.OUTPUT
conf = {"ssid": "your-ssid", "password": f"{lamp}"}
`;

/** Cuts, doublings, swaps and foreign signs at chosen places. */
function mutationsOf(text: string) {
  const place = fc.nat(text.length);
  const sign = fc.constantFrom(
    '(',
    ')',
    '{',
    '}',
    '[',
    ']',
    '<',
    '>',
    '"',
    "'",
    '#if 0\n',
    '#endif\n',
    ';',
    ',',
    '=',
    '\\',
    '\0',
    '\u{1f600}',
    '\r\n',
    '/*',
    '\ud800',
  );
  const change = fc.oneof(
    fc.record({ kind: fc.constant('cut' as const), at: place, length: fc.nat(60) }),
    fc.record({ kind: fc.constant('double' as const), at: place, length: fc.nat(60) }),
    fc.record({ kind: fc.constant('put' as const), at: place, sign }),
  );
  return fc.array(change, { minLength: 1, maxLength: 6 }).map((changes) =>
    changes.reduce((changed, step) => {
      const [before, after] = [changed.slice(0, step.at), changed.slice(step.at)];
      if (step.kind === 'put') return before + step.sign + after;
      return step.kind === 'cut' ? before + after.slice(step.length) : before + after.slice(0, step.length) + after;
    }, text),
  );
}

describe('any source', () => {
  it.each([
    ['a.ino', sketch],
    ['main.py', module],
  ])(
    'is read without fault, every place inside its file and quoting its words: %s',
    async (file, text) => {
      await fc.assert(
        fc.asyncProperty(mutationsOf(text), async (changed) => {
          const { sources, problems } = await readFiles({ [file]: changed });
          const places: Place[] = [
            ...problems.map(({ place }) => place),
            ...sources.flatMap(({ pins, includes, constants }) => [
              ...pins.flatMap(({ place, usedAt }) => [place, ...usedAt]),
              ...includes.map(({ place }) => place),
              ...constants.map(({ place }) => place),
            ]),
          ];
          for (const place of places) {
            if (place.kind !== 'text') throw new Error('every place of code is in its text');
            const [start, end] = place.span;
            expect(start).toBeGreaterThanOrEqual(0);
            expect(end).toBeGreaterThanOrEqual(start);
            expect(end).toBeLessThanOrEqual(changed.length);
            if (!place.quote.includes('••••')) expect(place.quote).toBe(changed.slice(start, end));
          }
          for (const { place } of sources.flatMap(({ secrets }) => secrets)) expect(place.quote).toBe('••••');
        }),
        { seed: 20, numRuns: 200 },
      );
    },
    120_000,
  );

  it('gives the same record twice', async () => {
    const once = JSON.stringify(await readFiles({ 'a.ino': sketch, 'main.py': module }));
    expect(JSON.stringify(await readFiles({ 'a.ino': sketch, 'main.py': module }))).toBe(once);
  });

  it('reads the unmutated sources in full', async () => {
    const { sources } = await readFiles({ 'a.ino': sketch, 'main.py': module });
    expect(sources[0]?.pins.map(({ pin }) => pin).toSorted()).toEqual(
      ['11', '12', '2', '21', '22', '3', '3', '4', '5', '5', '5', '6', '7'].toSorted(),
    );
    expect(sources[1]?.pins.map(({ pin }) => pin).toSorted()).toEqual(['0', '1', '2', '3', '5', 'D13'].toSorted());
  });

  it.each([
    ['brackets', 'a.ino', `int a = ${'('.repeat(5000)}5${')'.repeat(5000)};`],
    ['blocks', 'a.ino', `void f() ${'{'.repeat(5000)}${'}'.repeat(5000)}`],
    ['conditions', 'a.ino', `${'#if X\n'.repeat(2000)}int a = 5;\n${'#endif\n'.repeat(2000)}`],
    ['alternatives', 'a.ino', `#if A0\n${'#elif X\nint a = 5;\n'.repeat(2000)}#endif\n`],
    ['calls', 'a.ino', `int a = ${'f('.repeat(3000)}5${')'.repeat(3000)};`],
    ['lists', 'a.py', `a = ${'['.repeat(3000)}5${']'.repeat(3000)}`],
    [
      'aliases',
      'a.ino',
      `${Array.from({ length: 3000 }, (_, i) => `#define A${i + 1}_PIN A${i}_PIN`).join('\n')}\nvoid setup() { pinMode(A3000_PIN, OUTPUT); }`,
    ],
    [
      'functions in a ring',
      'a.ino',
      'void a(int p) { b(p); pinMode(p, OUTPUT); }\nvoid b(int p) { a(p); }\nvoid setup() { a(5); }',
    ],
  ])(
    'survives deep or circular %s',
    async (_, file, text) => {
      const { sources } = await readFiles({ [file]: text });
      expect(sources).toHaveLength(1);
    },
    60_000,
  );
});
