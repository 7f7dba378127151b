import fc from 'fast-check';
import { expect, test } from 'vitest';
import { proposeCrop } from './proposeCrop.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });

test('a subject in the middle fills three quarters of a crop along its tighter axis', () => {
  const crop = proposeCrop([0.4, 0.4, 0.2, 0.2], 1, { width: 1200, height: 900 });
  expect(crop?.[2]).toBeCloseTo(240 / 0.75 / 1200, 9);
  expect(crop?.[3]).toBeCloseTo(240 / 0.75 / 900, 9);
});

test('a crop of any shape has that shape, lies in the picture and keeps the subject whole', () => {
  const boxes = fc.tuple(share, share, share, share).map(([a, b, c, d]) => {
    const [left, right] = [Math.min(a, b), Math.max(a, b)];
    const [top, bottom] = [Math.min(c, d), Math.max(c, d)];
    return [left, top, right - left + 1e-3, bottom - top + 1e-3].map((each) => each / 1.001) as [
      number,
      number,
      number,
      number,
    ];
  });
  fc.assert(
    fc.property(boxes, fc.double({ min: 0.3, max: 3, noNaN: true }), (box, aspect) => {
      const size = { width: 1024, height: 683 };
      const crop = proposeCrop(box, aspect, size);
      const isTooWide = Math.max(box[2] * size.width, box[3] * size.height * aspect) > Math.min(1024, 683 * aspect);
      if (crop === null) return isTooWide;
      const [left, top, width, height] = crop;
      const hasShape = Math.abs((width * size.width) / (height * size.height) / aspect - 1) < 1e-6;
      const isWithin = left >= 0 && top >= 0 && left + width <= 1 + 1e-9 && top + height <= 1 + 1e-9;
      const isWhole =
        left <= box[0] + 1e-9 &&
        top <= box[1] + 1e-9 &&
        left + width >= box[0] + box[2] - 1e-9 &&
        top + height >= box[1] + box[3] - 1e-9;
      return hasShape && isWithin && isWhole;
    }),
    { numRuns: 200, seed: 5 },
  );
});

test('a subject as wide as the picture has no upright crop', () => {
  expect(proposeCrop([0, 0.4, 1, 0.2], 0.75, { width: 800, height: 600 })).toBeNull();
});
