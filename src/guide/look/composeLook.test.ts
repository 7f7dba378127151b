import { describe, expect, it } from 'vitest';
import { lineStartsOf } from '#core/sourceText.ts';
import { formatCell } from '#formats/csv/lexCsv.ts';
import { readPartsList } from '#formats/parts/readPartsList.ts';
import type { Drawing, PartLook } from '../guide.ts';
import { composeLook } from './composeLook.ts';

interface Row {
  readonly ref: string;
  readonly what: string;
  readonly value?: string;
  readonly rating?: string;
  readonly body?: string;
  readonly mpn?: string;
  readonly note?: string;
  readonly bands?: readonly string[];
}

/** The look of a row of a parts list, read as lists are. */
function lookOf({ ref, what, value = '', rating = '', body = '', mpn = '', note = '', bands }: Row): PartLook | null {
  const cells = [ref, what, value, rating, body, mpn, note].map((cell) => formatCell(cell, ','));
  const text = `Reference,Description,Value,Rating,Package,MPN,Note,Quantity\n${cells.join(',')},1\n`;
  const source = { file: 'parts.csv', text, encoding: 'utf-8', bom: false, hash: 'h', lineStarts: lineStartsOf(text) };
  const part = readPartsList(source as never)?.list.parts[0];
  if (part === undefined) throw new Error('no part was read');
  return composeLook(part, bands ?? null);
}

const words = (row: Row) => (lookOf(row)?.signs ?? []).map((sign) => sign.words).join(' ');
const drawing = (row: Row): Drawing | null => lookOf(row)?.drawing ?? null;
const banded = (row: Row) => {
  const drawn = drawing(row);
  return drawn?.kind === 'banded' ? drawn.bands : null;
};

describe('the bands of a resistor', () => {
  const resistor = { ref: 'R1', what: 'Resistor' };

  it.each([
    ['four for ±5 %', { value: '4.7 kΩ', rating: '5 %' }, ['yellow', 'violet', 'red', 'gold']],
    ['five for ±1 %', { value: '4.7 kΩ', rating: '1 %' }, ['yellow', 'violet', 'black', 'brown', 'brown']],
    [
      'five where three digits count',
      { value: '4.99 kΩ', rating: '1 %' },
      ['yellow', 'white', 'white', 'brown', 'brown'],
    ],
    ['one for a link', { value: '0 Ω' }, ['black']],
  ])('are %s', (_, row, bands) => {
    expect(banded({ ...resistor, ...row })).toEqual(bands);
  });

  it('are six where a temperature coefficient is told', () => {
    const row = { ...resistor, what: 'Resistor, metal film, 50 ppm/K', value: '220 Ω', rating: '1 %' };
    expect(banded(row)).toEqual(['red', 'red', 'black', 'black', 'brown', 'red']);
  });

  it('leave the last one open where the list tells no tolerance', () => {
    expect(banded({ ...resistor, value: '330 Ω' })).toEqual(['orange', 'orange', 'brown', null]);
    expect(words({ ...resistor, value: '330 Ω' })).toBe(
      'One of four bands: orange, orange, brown; one of five: orange, orange, black, black. The last band is the tolerance, which the list leaves open.',
    );
  });

  it('are those that the guide tells, from whichever end it reads them', () => {
    const told = ['brown', 'black', 'black', 'orange', 'orange'];
    expect(banded({ ...resistor, value: '330 Ω', rating: '1 %', bands: told })).toEqual([...told].reverse());
    const four = ['orange', 'orange', 'brown', 'silver'];
    expect(banded({ ...resistor, value: '330 Ω', rating: '5 %', bands: four })).toEqual(four);
  });

  it('are completed where the guide leaves the last one out', () => {
    const told = ['brown', 'black', 'black', 'red'];
    expect(banded({ ...resistor, value: '10 kΩ', rating: '1 %', bands: told })).toEqual([...told, 'brown']);
  });

  it('are not shown where the guide tells others than the list means', () => {
    expect(lookOf({ ...resistor, value: '330 Ω', rating: '5 %', bands: ['red', 'red', 'red', 'gold'] })).toBeNull();
  });

  it('are not shown for a value that is in dispute, unknown, or of no banded body', () => {
    expect(lookOf(resistor)).toBeNull();
    expect(banded({ ...resistor, what: 'Resistor, wire-wound, 5 W', value: '22 Ω', rating: '5 %' })).toBeNull();
    expect(lookOf({ ...resistor, what: 'Resistor network', value: '10 kΩ', rating: '5 %' })).toBeNull();
  });
});

describe('what is printed on chips', () => {
  const chip = { ref: 'R1', what: 'Resistor', value: '10 kΩ' };

  it.each([
    ['0805', '5 %', 'Often printed 103 or 1002. Either way round is right.'],
    ['0805', '1 %', 'Often printed 1002, 01C or 103. Either way round is right.'],
    ['0603', '1 %', 'Often printed 01C, 1002 or 103. Either way round is right.'],
    ['0402', '1 %', 'Too small to carry a print, so keep it in its labelled strip until it is used.'],
  ])('is in %s at %s', (body, rating, said) => {
    expect(words({ ...chip, body, rating })).toBe(said);
    expect(lookOf({ ...chip, body, rating })?.signs.every(({ usual }) => usual)).toBe(true);
  });

  it('is nothing on a ceramic capacitor', () => {
    expect(words({ ref: 'C1', what: 'Capacitor', value: '100 nF', body: '0805' })).toContain('no print');
  });
});

describe('capacitors', () => {
  it('carry three figures and a letter where they are ceramic', () => {
    const row = { ref: 'C1', what: 'Ceramic capacitor', value: '22 nF', rating: '10 %' };
    expect(words(row)).toBe(
      'Often printed 223 (22 with 3 noughts, in picofarads), and K after it for its tolerance. Either way round is right.',
    );
    expect(drawing(row)).toEqual({ kind: 'form', form: 'disc', print: ['223'] });
    expect(words({ ...row, value: '33 pF', rating: '' })).toContain('Often printed 330 (33 pF) or just 33.');
  });

  it('are printed in full and marked at the minus where they are cans', () => {
    const row = { ref: 'C1', what: 'Electrolytic capacitor', value: '470 µF', rating: '16 V' };
    expect(words(row)).toBe(
      'Printed on its side: 470 µF and 16 V. A stripe down its side marks the minus lead. The longer lead is plus, as long as none is cut.',
    );
    expect(lookOf(row)?.signs.map(({ usual }) => usual)).toEqual([false, true, true]);
  });

  it('are marked at the plus where they are tantalum, and not at all where they have no way round', () => {
    expect(words({ ref: 'C1', what: 'Tantalum capacitor', value: '10 µF', body: '1206' })).toContain('marks plus');
    expect(words({ ref: 'C1', what: 'Bipolar electrolytic capacitor', value: '10 µF' })).not.toMatch(/stripe|plus/);
  });

  it('are not given a form that nobody told', () => {
    expect(lookOf({ ref: 'C1', what: 'Capacitor', value: '100 nF' })?.drawing).toBeNull();
    expect(lookOf({ ref: 'C1', what: 'Capacitor', value: '100 µF' })).toBeNull();
  });

  it('keep silent on what the maker’s own note says', () => {
    const row = { ref: 'C1', what: 'Electrolytic capacitor', value: '470 µF', note: 'The stripe is at the plus lead' };
    expect(words(row)).not.toContain('stripe');
  });
});

describe('bodies', () => {
  it.each([
    ['DIP-8', 'NE555 timer IC', { kind: 'dual', pins: 8, feet: 'pins' }],
    ['SOIC-16', 'Shift register', { kind: 'dual', pins: 16, feet: 'leads' }],
    ['TSSOP-20', 'Level shifter', { kind: 'dual', pins: 20, feet: 'leads' }],
    ['QFN-32', 'Microcontroller', { kind: 'quad', pins: 32 }],
    ['TO-220', 'Voltage regulator', { kind: 'form', form: 'to-220', print: [] }],
  ])('%s is drawn with its pins', (body, what, drawn) => {
    expect(drawing({ ref: 'U1', what, body })).toEqual(drawn);
  });

  it('are found for transistors, whose pins only the data sheet names', () => {
    const row = { ref: 'Q1', what: 'NPN transistor BC547B', body: 'TO-92' };
    expect(drawing(row)).toEqual({ kind: 'form', form: 'to-92', print: [] });
    expect(words(row)).toContain('Often printed with its type, BC547B');
    expect(words(row)).toContain('Flat side towards you and legs down, pins 1, 2 and 3 stand from left to right.');
    expect(words(row)).toContain('data sheet');
  });

  it('do not take a SOT-23 of five legs for one of three', () => {
    expect(drawing({ ref: 'U1', what: 'Regulator', body: 'SOT-23-5' })).toBeNull();
  });

  it('are strips of pins or openings by their positions and pitch', () => {
    expect(drawing({ ref: 'J1', what: 'Pin header, 2 × 20' })).toEqual({
      kind: 'strip',
      rows: 2,
      columns: 20,
      openings: false,
    });
    const socket = { ref: 'X1', what: 'Header socket, female, 1 × 15 positions', body: '2.54 mm' };
    expect(words(socket)).toBe('One row of 15 openings, 2.54 mm apart, about 38 mm long.');
  });

  it('are modules in proportion where a size is told, and nothing where none is', () => {
    expect(drawing({ ref: 'U1', what: 'Charger module', body: '28 × 17 mm' })).toEqual({
      kind: 'plate',
      size: [28, 17],
      pins: null,
      holes: false,
    });
    expect(lookOf({ ref: 'U1', what: 'Charger module' })).toBeNull();
  });
});

describe('which way round', () => {
  it.each([
    [{ ref: 'D1', what: 'Diode 1N4148' }, 'band at one end marks the cathode'],
    [{ ref: 'D1', what: 'White LED, 5 mm' }, 'The longer lead is the anode'],
    [{ ref: 'BT1', what: 'Coin cell CR2032' }, '20 mm across and 3.2 mm thick'],
    [{ ref: 'BT1', what: 'Lithium-ion cell 18650, 2600 mAh' }, '18 mm thick and 65 mm long'],
  ])('%o says it', (row, said) => {
    expect(words(row)).toContain(said);
  });

  it('is not taken from a charge that looks like the name of a cell', () => {
    expect(lookOf({ ref: 'BT1', what: 'Battery pack 12500 mAh' })).toBeNull();
  });

  it('is not said of lights that are no single LED', () => {
    expect(lookOf({ ref: 'LED1', what: 'Addressable LED WS2812B' })).toBeNull();
  });
});

describe('a form that nobody told', () => {
  it.each([
    ['a small version of a diode with leads', { ref: 'D1', what: 'Diode 1N4148W' }],
    ['an LED without a size', { ref: 'D1', what: 'LED, red' }],
    ['a countersunk screw', { ref: 'MP1', what: 'Countersunk screw M3 × 10 mm' }],
  ])('is not drawn, though there are words for %s', (_, row) => {
    expect(lookOf(row)?.drawing).toBeNull();
    expect(lookOf(row)?.signs).not.toEqual([]);
  });

  it.each([
    [
      'a holder whose body is told in millimetres',
      { ref: 'XF1', what: 'Fuse holder for 5 × 20 mm', body: 'PCB 22.6 mm' },
    ],
    ['an LED to be sewn on', { ref: 'D1', what: 'Sewable LED, amber' }],
    ['thread', { ref: 'W1', what: 'Conductive thread' }],
  ])('is not made up for %s', (_, row) => {
    expect(lookOf(row)).toBeNull();
  });

  it('is found by the reference where the description has no noun for it', () => {
    expect(drawing({ ref: 'U1', what: 'Timer, CMOS, 8 pins', body: 'DIP-8' })).toEqual({
      kind: 'dual',
      pins: 8,
      feet: 'pins',
    });
  });
});

it('gives no length of a cell against the one that is told', () => {
  expect(words({ ref: 'BT1', what: 'Lithium-ion cell 18650, protected', body: '18 × 69 mm' })).toBe(
    'The end with the button is plus.',
  );
});

it('says nothing of a thing whose look nobody knows', () => {
  expect(lookOf({ ref: 'MP1', what: 'Lid, printed' })).toBeNull();
  expect(lookOf({ ref: 'PS1', what: 'Plug-in supply', value: '5 V' })).toBeNull();
});
