import { describe, expect, it } from 'vitest';
import { measurePicture } from '#imaging/measures/measurePicture.ts';
import { pixelsPerMillimetre } from '#imaging/measures/pixelsPerMillimetre.ts';
import { codedFromLinear, type Picture, pictureFrom } from '#imaging/pixels/picture.ts';
import { randomFrom } from './randomPicture.ts';

type Colour = readonly [red: number, green: number, blue: number];

/** A picture drawn from linear light at each place, with a little noise so that codes do not stand in steps. */
function drawn(width: number, height: number, light: (x: number, y: number) => Colour, sigma = 0.5): Picture {
  const random = randomFrom(width);
  const rgb = new Uint8Array(3 * width * height);
  for (let row = 0, at = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      for (const value of light((column + 0.5) / width, (row + 0.5) / height)) {
        rgb[at++] = Math.min(255, Math.max(0, Math.round(255 * codedFromLinear(value) + sigma * random.normal())));
      }
    }
  }
  return pictureFrom(width, height, rgb);
}

const grey = (value: number): Colour => [value, value, value];

describe('exposure', () => {
  it.each([-2, -1, 0, 0.5])('of a bench of 64 %% at %s EV is that', (ev) => {
    const { exposure } = measurePicture(drawn(240, 160, (x) => grey((x < 0.5 ? 0.64 : 0.05) * 2 ** ev), 0));
    expect(Math.abs(exposure.ev - ev)).toBeLessThan(0.03);
  });
  it('counts what is cut off', () => {
    const black = drawn(200, 120, (x) => grey(x < 0.25 ? 0 : x > 0.9 ? 1 : 0.3), 0).rgb;
    const { exposure } = measurePicture(pictureFrom(200, 120, black));
    expect(exposure.shadowsClipped).toBeCloseTo(0.25, 10);
    expect(exposure.highlightsClipped).toBeCloseTo(0.1, 10);
  });
  it.each([
    [1, 0],
    [1, 90],
    [2, 180],
    [2, 270],
  ])('sees light fall off by %s stops, from %s degrees', (stops, from) => {
    const [cosine, sine] = [Math.cos((from * Math.PI) / 180), Math.sin((from * Math.PI) / 180)];
    const picture = drawn(480, 320, (x, y) => grey(0.2 * 2 ** (stops * ((x - 0.5) * cosine + (y - 0.5) * sine))));
    const { evenness, brightest } = measurePicture(picture).exposure;
    expect(Math.abs(-Math.log2(evenness ?? 0) - stops)).toBeLessThan(0.2);
    const off = Math.abs((brightest ?? Number.NaN) - from);
    expect(Math.min(off, 360 - off)).toBeLessThan(5);
  });
  it('is not led by things of other greys that lie in even light', () => {
    const checks = drawn(480, 320, (x, y) => grey((Math.floor(x * 8) + Math.floor(y * 6)) % 2 === 0 ? 0.5 : 0.06));
    expect(measurePicture(checks).exposure.evenness).toBeGreaterThan(0.85);
  });
});

describe('the colour of the light', () => {
  it('is told by a grey reference, with the gains that take it away', () => {
    const picture = drawn(320, 240, (x, y) => (x < 0.3 && y < 0.3 ? [0.4, 0.32, 0.2] : [0.02, 0.3, 0.5]));
    const cast = measurePicture(picture, { grey: { x: 0.05, y: 0.05, width: 0.2, height: 0.2 } }).cast;
    expect(cast?.gains[0]).toBeCloseTo(0.32 / 0.4, 2);
    expect(cast?.gains[2]).toBeCloseTo(0.32 / 0.2, 2);
    expect(cast?.verdict).toBe('warm');
  });
  it.each([
    [[1.25, 1, 0.7], 'warm'],
    [[0.8, 1, 1.3], 'cool'],
    [[1, 1, 1], 'neutral'],
  ] as const)('%s is found without one, with a board of green in the middle', (light, verdict) => {
    const things = (x: number, y: number): Colour => {
      if (Math.abs(x - 0.5) < 0.25 && Math.abs(y - 0.5) < 0.25) return [0.02, 0.15, 0.06];
      return y < 0.15 ? grey(0.7) : grey(0.35);
    };
    const picture = drawn(
      320,
      240,
      (x, y) => things(x, y).map((value, at) => value * (light[at] ?? 1)) as unknown as Colour,
    );
    const cast = measurePicture(picture).cast;
    expect(cast?.verdict).toBe(verdict);
    expect(Math.abs(Math.log2((cast?.gains[0] ?? 0) * light[0]))).toBeLessThan(0.08);
    expect(Math.abs(Math.log2((cast?.gains[2] ?? 0) * light[2]))).toBeLessThan(0.08);
  });
});

describe('noise', () => {
  it.each([1, 4, 9])('of σ %s in each channel is found in luma, beside texture', (sigma) => {
    const picture = drawn(
      400,
      304,
      (x, y) => grey(x < 0.5 ? 0.3 : 0.3 + 0.15 * Math.sin(80 * x) * Math.sin(90 * y)),
      sigma,
    );
    const inLuma = sigma * Math.hypot(0.2126, 0.7152, 0.0722);
    // Rounding to whole codes adds 1/12 in each channel.
    const expected = Math.hypot(inLuma, Math.sqrt(1 / 12) * Math.hypot(0.2126, 0.7152, 0.0722));
    expect(Math.abs((measurePicture(picture).noise ?? 0) / expected - 1)).toBeLessThan(0.06);
  });
});

describe('glare', () => {
  it('is the share of small blown spots, not of a lamp or a paper', () => {
    const spot = (x: number, y: number, atX: number, atY: number, side: number) =>
      Math.max(Math.abs(x - atX), Math.abs(y - atY)) < side / 2;
    const small = drawn(
      400,
      400,
      (x, y) => grey(spot(x, y, 0.25, 0.25, 0.04) || spot(x, y, 0.7, 0.6, 0.02) ? 1 : 0.1),
      0,
    );
    expect(measurePicture(small).glare).toBeCloseTo(0.0016 + 0.0004, 4);
    const paper = drawn(400, 400, (x, y) => grey(spot(x, y, 0.5, 0.5, 0.4) ? 1 : 0.1), 0);
    expect(measurePicture(paper).glare).toBe(0);
  });
});

describe('tilt', () => {
  it.each([-9, -2.5, 0, 4, 12])('of a grid turned by %s degrees clockwise is that', (degrees) => {
    const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const picture = drawn(512, 512, (x, y) => {
      const [u, v] = [x * cosine + y * sine, y * cosine - x * sine];
      // Lines with soft rims: hard ones would show the rows of pixels as steps.
      const line = (at: number) => Math.exp(-((20 * (at - Math.floor(at) - 0.5)) ** 2));
      return grey(0.2 + 0.5 * Math.max(line(9 * u), line(7 * v)));
    });
    expect(Math.abs((measurePicture(picture).tilt ?? Number.NaN) - degrees)).toBeLessThan(0.6);
  });
  it('is not told of rings, that run every way', () => {
    const rings = drawn(400, 400, (x, y) => grey(0.4 + 0.3 * Math.sin(90 * Math.hypot(x - 0.5, y - 0.5))));
    expect(measurePicture(rings).tilt).toBeNull();
  });
});

describe('clutter', () => {
  it('grows with the things that lie round the subject, not with the detail in it', () => {
    const subject = { x: 0.3, y: 0.3, width: 0.4, height: 0.4 };
    const among = (things: number) => {
      const random = randomFrom(9);
      const places = Array.from({ length: things }, () => [random.next(), random.next()] as const);
      return drawn(512, 384, (x, y) => {
        if (Math.abs(x - 0.5) < 0.12 && Math.abs(y - 0.5) < 0.12) return grey(Math.sin(x * 300) > 0 ? 0.6 : 0.1);
        return grey(places.some(([atX, atY]) => Math.max(Math.abs(x - atX), Math.abs(y - atY)) < 0.03) ? 0.05 : 0.5);
      });
    };
    const scores = [0, 8, 30, 90].map((things) => measurePicture(among(things), { subject }).clutter.score);
    expect(scores[0]).toBe(0);
    expect(scores).toEqual(scores.toSorted((a, b) => a - b));
    expect(new Set(scores).size).toBe(4);
  });
});

describe('pixels to a millimetre', () => {
  it('follow from the area of the corners', () => {
    const corners = [
      [0.1, 0.2],
      [0.7, 0.2],
      [0.7, 0.8],
      [0.1, 0.8],
    ] as const;
    // 600 × 450 pixels over 60 × 45 mm.
    expect(pixelsPerMillimetre(corners, { width: 1000, height: 750 }, { width: 60, height: 45 })).toBeCloseTo(10, 10);
    const lean = [
      [0.2, 0.2],
      [0.8, 0.2],
      [0.7, 0.8],
      [0.1, 0.8],
    ] as const;
    expect(pixelsPerMillimetre(lean, { width: 1000, height: 750 }, { width: 60, height: 45 })).toBeCloseTo(10, 10);
  });
  it('are none where the corners enclose nothing', () => {
    const line = [
      [0, 0],
      [1, 1],
      [1, 1],
      [0, 0],
    ] as const;
    expect(pixelsPerMillimetre(line, { width: 10, height: 10 }, { width: 1, height: 1 })).toBeNull();
  });
});

describe('pictures of hardly any pixels', () => {
  it.each([
    [1, 1],
    [3, 1],
    [1, 9],
    [5, 4],
    [17, 16],
  ])('%s × %s are measured without a number that is none', (width, height) => {
    const measures = measurePicture(drawn(width, height, () => grey(0.4), 0));
    expect(JSON.stringify(measures)).not.toMatch(/NaN/);
    expect(measures.focus.verdict).toBe('unsure');
    expect(Number.isFinite(measures.exposure.ev)).toBe(true);
  });
});
