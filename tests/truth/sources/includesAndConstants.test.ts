import { describe, expect, it } from 'vitest';
import { readFiles } from './readFiles.ts';

async function includesIn(file: string, text: string, others: readonly string[] = []) {
  const { sources } = await readFiles({ [file]: text }, others);
  const [facts] = sources;
  return Object.fromEntries(
    (facts?.includes ?? []).map(({ written, kind, library, found }) => [written, [kind, library, found]]),
  );
}

async function constantsIn(file: string, text: string) {
  const { sources } = await readFiles({ [file]: text });
  return (sources[0]?.constants ?? []).map(({ name, value, kind }) => `${kind} ${name ?? '-'} ${value}`);
}

describe('headers', () => {
  // Names of libraries against headers: library.properties files of the libraries, from memory.
  it('knows libraries by a header that bears another name', async () => {
    const text = ['U8x8lib.h', 'PID_v1.h', 'DHT.h', 'Adafruit_BME280.h', 'TinyGPS++.h']
      .map((h) => `#include <${h}>`)
      .join('\n');
    expect(await includesIn('a.ino', text)).toEqual({
      'U8x8lib.h': ['external', 'U8g2', true],
      'PID_v1.h': ['external', 'PID', true],
      'DHT.h': ['external', 'DHT sensor library', true],
      'Adafruit_BME280.h': ['external', 'Adafruit BME280 Library', true],
      'TinyGPS++.h': ['external', 'TinyGPSPlus', true],
    });
  });

  it('asks nobody to install what comes with the language, the core or the kit', async () => {
    const headers = [
      'Arduino.h',
      'Wire.h',
      'SPI.h',
      'vector',
      'stdint.h',
      'avr/pgmspace.h',
      'ESP8266WiFi.h',
      'WiFi.h',
      'freertos/task.h',
      'driver/gpio.h',
      'hardware/pwm.h',
      'esp_sleep.h',
      'Bounce.h',
      'SD_t3.h',
    ];
    const found = await includesIn('a.ino', headers.map((header) => `#include <${header}>`).join('\n'));
    expect(Object.values(found).map(([kind]) => kind)).toEqual(headers.map(() => 'standard'));
  });

  it('knows the core and libraries in quotes as well', async () => {
    expect(await includesIn('a.ino', '#include "Arduino.h"\n#include "FastLED.h"')).toEqual({
      'Arduino.h': ['standard', null, true],
      'FastLED.h': ['external', 'FastLED', true],
    });
  });

  it('finds a file of the build beside the source, in include, and in its own lib folder', async () => {
    const text =
      '#include "pins.h"\n#include "sub/more.h"\n#include "wide.h"\n#include "Lamp.h"\n#include <own.h>\n#include "../up.h"';
    const others = ['src/pins.h', 'src/sub/more.h', 'include/wide.h', 'lib/Lamp/src/Lamp.h', 'include/own.h', 'up.h'];
    const found = await includesIn('src/main.cpp', text, others);
    expect(Object.values(found)).toEqual(others.map(() => ['local', null, true]));
  });

  it('says that a local file is not there', async () => {
    expect(await includesIn('a.ino', '#include "secrets.h"')).toEqual({ 'secrets.h': ['local', null, false] });
  });

  it('calls an unknown header in angle brackets external, of a library that it cannot name', async () => {
    expect(await includesIn('a.ino', '#include <Moonrise.h>')).toEqual({ 'Moonrise.h': ['external', null, true] });
  });

  it('prefers a file of the build to a library of the same name', async () => {
    expect(await includesIn('a.ino', '#include "DHT.h"', ['DHT.h'])).toEqual({ 'DHT.h': ['local', null, true] });
    expect(await includesIn('a.ino', '#include "queue.h"', ['queue.h'])).toEqual({ 'queue.h': ['local', null, true] });
    expect(await includesIn('a.ino', '#include <queue.h>', ['queue.h'])).toEqual({
      'queue.h': ['standard', null, true],
    });
  });

  it('passes over includes in comments and blocks that are switched off', async () => {
    expect(await includesIn('a.ino', '// #include <FastLED.h>\n#if 0\n#include <DHT.h>\n#endif')).toEqual({});
  });
});

describe('modules', () => {
  it('tells firmware, packages and files of the build apart', async () => {
    const text =
      'import machine, time, neopixel\nimport paho.mqtt.client\nfrom lamp import Lamp\nimport secrets\nimport ujson as json\n';
    expect(await includesIn('main.py', text, ['lamp.py'])).toEqual({
      machine: ['standard', null, true],
      time: ['standard', null, true],
      neopixel: ['standard', null, true],
      'paho.mqtt.client': ['external', 'paho-mqtt', true],
      lamp: ['local', null, true],
      secrets: ['local', null, false],
      ujson: ['standard', null, true],
    });
  });

  it('knows that some modules are built into one firmware and a package for the other', async () => {
    expect(
      await includesIn(
        'code.py',
        'import board\nimport neopixel\nimport adafruit_sht31d\nimport adafruit_minimqtt.adafruit_minimqtt as m\n',
      ),
    ).toEqual({
      board: ['standard', null, true],
      neopixel: ['external', 'adafruit-circuitpython-neopixel', true],
      adafruit_sht31d: ['external', 'adafruit-circuitpython-sht31d', true],
      'adafruit_minimqtt.adafruit_minimqtt': ['external', 'adafruit-circuitpython-minimqtt', true],
    });
  });

  it('leaves the standard module of that name alone on a computer', async () => {
    expect(await includesIn('tool.py', 'import secrets\n')).toEqual({ secrets: ['standard', null, true] });
  });

  it('finds modules in lib, and by dots', async () => {
    const others = ['lib/bme280.py', 'app/pins.py', 'app/drivers/__init__.py'];
    expect(
      await includesIn(
        'app/main.py',
        'import bme280\nfrom .pins import LED\nfrom . import drivers\nfrom .gone import x\n',
        others,
      ),
    ).toEqual({
      bme280: ['local', null, true],
      '.pins': ['local', null, true],
      '.drivers': ['local', null, true],
      '.gone': ['local', null, false],
    });
  });
});

describe('constants of sketches', () => {
  it.each([
    ['#define NUM_LEDS 12', ['count NUM_LEDS 12']],
    ['const int LED_COUNT = 12;', ['count LED_COUNT 12']],
    ['#define NUMPIXELS 12', ['count NUMPIXELS 12']],
    ['const uint8_t numLeds = 12;', ['count numLeds 12']],
    ['Adafruit_NeoPixel strip(12, 6, NEO_GRB);', ['count - 12']],
    ['#define RING 12\nAdafruit_NeoPixel strip(RING, 6, NEO_GRB);', ['count RING 12']],
    ['#define OLED_ADDR 0x3C', ['address OLED_ADDR 0x3C']],
    ['LiquidCrystal_I2C lcd(0x27, 16, 2);', ['address - 0x27']],
    ['const long BAUD_RATE = 115200;', ['baud BAUD_RATE 115200']],
    ['const int BRIGHTNESS = 80;', ['setting BRIGHTNESS 80']],
    ['const char* LAMP_NAME = "Tide";', ['setting LAMP_NAME Tide']],
    ['#define USE_SOUND true', ['setting USE_SOUND true']],
    ['#ifndef LAMP_H\n#define LAMP_H\n#endif', []],
    ['int counter = 0;', []],
    ['int address = 16;', []],
    ['const int EEPROM_ADDRESS = 0;', ['setting EEPROM_ADDRESS 0']],
    ['const int LAMP_PIN = 5;', []],
  ])('%s', async (line, expected) => {
    expect(await constantsIn('a.ino', `${line}\nvoid setup() {}\n`)).toEqual(expected);
  });

  it.each([
    ['Serial.begin(115200);', ['baud - 115200']],
    ['FastLED.addLeds<WS2812B, 5, GRB>(ring, 12);', ['count - 12']],
    ['oled.begin(SSD1306_SWITCHCAPVCC, 0x3C);', ['address - 0x3C']],
    ['bme.begin(0x76);', ['address - 0x76']],
    ['Wire.beginTransmission(0x68);', ['address - 0x68']],
    ['Wire.requestFrom(0x68, 7);', ['address - 0x68']],
    ['strip.begin(0xFF);', []],
    ['const int later = 5;', []],
  ])('%s', async (line, expected) => {
    expect(await constantsIn('a.ino', `void setup() {\n  ${line}\n}\n`)).toEqual(expected);
  });

  it('takes no constant behind the first function for a setting', async () => {
    expect(await constantsIn('a.ino', 'void setup() {}\nconst int LATE = 3;\n')).toEqual([]);
  });
});

describe('constants of board Python', () => {
  it.each([
    ['import neopixel, board\nring = neopixel.NeoPixel(board.D6, 12)', ['count - 12']],
    ['NUM_PIXELS = 12', ['count NUM_PIXELS 12']],
    ['oled = SSD1306_I2C(128, 64, i2c, addr=0x3C)', ['address - 0x3C']],
    ['from machine import UART\nuart = UART(1, baudrate=9600)', ['baud - 9600']],
    ['BRIGHTNESS = 0.4', ['setting BRIGHTNESS 0.4']],
    ['brightness = 0.4', []],
  ])('%s', async (text, expected) => {
    expect(await constantsIn('main.py', `${text}\n`)).toEqual(expected);
  });
});
