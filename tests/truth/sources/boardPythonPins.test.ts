import { describe, expect, it } from 'vitest';
import { describePin, pinsIn, readFiles } from './readFiles.ts';

// MicroPython: docs.micropython.org, module machine and those beside it. CircuitPython: docs.circuitpython.org, core
// modules. See SOURCE.md.

const micro = 'from machine import Pin, ADC, PWM, I2C, SoftI2C, SPI, UART\nimport machine, neopixel, dht, onewire\n';
const circuit =
  'import board, digitalio, analogio, pwmio, busio, neopixel, keypad, rotaryio, touchio\nfrom digitalio import DigitalInOut, Direction, Pull\n';

describe('pins of MicroPython', () => {
  it.each([
    ['led = Pin(5, Pin.OUT)', ['led 5 output -']],
    ['key = Pin(4, Pin.IN, Pin.PULL_UP)', ['key 4 input -']],
    ['led = machine.Pin(5, machine.Pin.OUT)', ['led 5 output -']],
    ['led = Pin(5, mode=Pin.OUT)', ['led 5 output -']],
    ['led = Pin("LED", Pin.OUT)', ['led LED output -']],
    ['led = Pin("GP15", Pin.OUT)', ['led GP15 output -']],
    ['led = Pin(Pin.board.X1, Pin.OUT)', ['led X1 output -']],
    ['led = Pin(Pin.cpu.A5, Pin.OUT)', ['led PA5 output -']],
    ['level = ADC(Pin(26))', ['- 26 analogue-in level']],
    ['level = ADC(26)', ['- 26 analogue-in level']],
    ['lamp = PWM(Pin(15), freq=1000)', ['- 15 pwm lamp']],
    ['i2c = I2C(0, scl=Pin(1), sda=Pin(0), freq=400000)', ['- 1 i2c-scl i2c', '- 0 i2c-sda i2c']],
    ['i2c = SoftI2C(scl=Pin(22), sda=Pin(21))', ['- 22 i2c-scl i2c', '- 21 i2c-sda i2c']],
    ['i2c = SoftI2C(Pin(22), Pin(21))', ['- 22 i2c-scl i2c', '- 21 i2c-sda i2c']],
    ['spi = SPI(0, sck=Pin(18), mosi=Pin(19), miso=Pin(16))', ['- 18 spi spi', '- 19 spi spi', '- 16 spi spi']],
    ['uart = UART(1, baudrate=9600, tx=Pin(4), rx=Pin(5))', ['- 4 uart uart', '- 5 uart uart']],
    ['ring = neopixel.NeoPixel(Pin(28), 12)', ['- 28 led-strip ring']],
    ['climate = dht.DHT22(Pin(2))', ['- 2 input climate']],
    ['wire = onewire.OneWire(Pin(12))', ['- 12 other wire']],
    ['key = Pin(4, Pin.IN)\nkey.irq(trigger=Pin.IRQ_FALLING, handler=on_press)', ['key 4 input+interrupt -']],
  ])('%s', async (line, expected) => {
    expect(await pinsIn('main.py', micro + line)).toEqual(expected);
  });

  it.each([
    ['LED_PIN = 5\nled = Pin(LED_PIN, Pin.OUT)', ['LED_PIN 5 output -']],
    ['from micropython import const\nLED_PIN = const(5)\nled = Pin(LED_PIN, Pin.OUT)', ['LED_PIN 5 output -']],
    ['RING = Pin(28)\nring = neopixel.NeoPixel(RING, 12)', ['RING 28 led-strip ring']],
    ['SDA, SCL = 4, 5\nbus = I2C(0, sda=Pin(SDA), scl=Pin(SCL))', ['SDA 4 i2c-sda bus', 'SCL 5 i2c-scl bus']],
    ['KEY_PIN = 14', ['KEY_PIN 14 named -']],
  ])('%s', async (text, expected) => {
    expect(await pinsIn('main.py', micro + text)).toEqual(expected);
  });

  it('takes every pin that a loop or a comprehension runs through', async () => {
    expect(await pinsIn('main.py', `${micro}for p in (2, 3):\n    Pin(p, Pin.OUT)\n`)).toEqual([
      '- 2 output -',
      '- 3 output -',
    ]);
    expect(await pinsIn('main.py', `${micro}for p in range(2, 4):\n    Pin(p, Pin.OUT)\n`)).toHaveLength(2);
    expect(await pinsIn('main.py', `${micro}KEYS = [2, 3]\nkeys = [Pin(p, Pin.IN) for p in KEYS]\n`)).toEqual([
      'KEYS[0] 2 input -',
      'KEYS[1] 3 input -',
    ]);
    expect(await pinsIn('main.py', `${micro}for i, p in enumerate([2, 3]):\n    Pin(p, Pin.OUT)\n`)).toHaveLength(2);
  });

  it('follows a pin into the objects of a class of the build', async () => {
    const text = `${micro}
class Lamp:
    def __init__(self, pin, level=0):
        self.out = Pin(pin, Pin.OUT)
    def on(self):
        self.out.on()

left = Lamp(7)
right = Lamp(pin=8)
`;
    const pins = await pinsIn('main.py', text);
    expect(pins.map((pin) => pin.split(' ').slice(1, 3).join(' '))).toEqual(['7 output', '8 output']);
  });

  it('finds a pin in another module, however it is imported', async () => {
    const uses = [
      'from pins import LED\nled = Pin(LED, Pin.OUT)',
      'from pins import LED as LAMP\nled = Pin(LAMP, Pin.OUT)',
      'import pins\nled = Pin(pins.LED, Pin.OUT)',
      'import pins as p\nled = Pin(p.LED, Pin.OUT)',
      'from pins import *\nled = Pin(LED, Pin.OUT)',
    ];
    for (const use of uses) {
      const { sources, problems } = await readFiles({ 'main.py': micro + use, 'pins.py': 'LED = 5\n' });
      expect(problems).toEqual([]);
      expect(sources[1]?.pins.map(({ pin, uses: found }) => [pin, found])).toEqual([['5', ['output']]]);
      expect(sources[1]?.pins[0]?.usedAt[0]?.file).toBe('main.py');
    }
  });

  it('passes over what stands in comments, texts and under if False', async () => {
    const text = `${micro}# led = Pin(5, Pin.OUT)\nnote = "Pin(6, Pin.OUT)"\nif False:\n    led = Pin(7, Pin.OUT)\n`;
    expect(await pinsIn('main.py', text)).toEqual([]);
  });

  it('takes no call for a pin whose name is not that of the module', async () => {
    expect(await pinsIn('main.py', 'from pinboard import Pin\nPin(5)\n')).toEqual([]);
    expect(await pinsIn('main.py', 'def Pin(n):\n    return n\nPin(5)\n')).toEqual([]);
  });
});

describe('pins of CircuitPython', () => {
  it.each([
    ['led = digitalio.DigitalInOut(board.D13)\nled.direction = digitalio.Direction.OUTPUT', ['led D13 output -']],
    ['led = DigitalInOut(board.D13)\nled.direction = Direction.OUTPUT', ['led D13 output -']],
    ['led = DigitalInOut(board.GP15)\nled.switch_to_output()', ['led GP15 output -']],
    ['key = DigitalInOut(board.D5)\nkey.switch_to_input(pull=Pull.UP)', ['key D5 input -']],
    ['key = DigitalInOut(board.D5)\nkey.direction = Direction.INPUT\nkey.pull = Pull.UP', ['key D5 input -']],
    ['level = analogio.AnalogIn(board.A0)', ['level A0 analogue-in -']],
    ['lamp = pwmio.PWMOut(board.D5, frequency=5000)', ['lamp D5 pwm -']],
    ['i2c = busio.I2C(board.SCL, board.SDA)', ['- SCL i2c-scl i2c', '- SDA i2c-sda i2c']],
    ['i2c = busio.I2C(sda=board.GP4, scl=board.GP5)', ['- GP4 i2c-sda i2c', '- GP5 i2c-scl i2c']],
    ['spi = busio.SPI(board.SCK, board.MOSI, board.MISO)', ['- SCK spi spi', '- MOSI spi spi', '- MISO spi spi']],
    ['spi = busio.SPI(board.SCK, MISO=board.MISO)', ['- SCK spi spi', '- MISO spi spi']],
    ['uart = busio.UART(board.TX, board.RX, baudrate=9600)', ['- TX uart uart', '- RX uart uart']],
    ['ring = neopixel.NeoPixel(board.NEOPIXEL, 12)', ['- NEOPIXEL led-strip ring']],
    ['knob = rotaryio.IncrementalEncoder(board.D9, board.D10)', ['- D9 encoder knob', '- D10 encoder knob']],
    [
      'keys = keypad.Keys((board.D5, board.D6), value_when_pressed=False, pull=True)',
      ['- D5 input keys', '- D6 input keys'],
    ],
    ['pad = touchio.TouchIn(board.A1)', ['- A1 input pad']],
    ['RING = board.D6\nring = neopixel.NeoPixel(RING, 12)', ['RING D6 led-strip ring']],
  ])('%s', async (text, expected) => {
    expect(await pinsIn('code.py', `${circuit}${text}\n`)).toEqual(expected);
  });

  it('points at the words of the pin, not at the import', async () => {
    const { sources } = await readFiles({
      'code.py': 'import board\nimport touchio\npad = touchio.TouchIn(board.A1)\n',
    });
    expect(sources[0]?.pins[0]?.place).toMatchObject({ line: 3, column: 23, quote: 'board.A1' });
  });

  it('gives no pin for a bus that the board itself wires', async () => {
    expect(await pinsIn('code.py', 'import board\ni2c = board.I2C()\nother = board.STEMMA_I2C()\n')).toEqual([]);
  });

  it('takes the clock first where the module does, unlike a sketch', async () => {
    const { sources } = await readFiles({
      'code.py': 'import board, busio\ni2c = busio.I2C(board.GP5, board.GP4)\n',
      'lamp.ino': 'void setup() { Wire.begin(4, 5); }',
    });
    expect(sources.map(({ pins }) => pins.map(describePin))).toEqual([
      ['- GP5 i2c-scl i2c', '- GP4 i2c-sda i2c'],
      ['- 4 i2c-sda Wire', '- 5 i2c-scl Wire'],
    ]);
  });
});
