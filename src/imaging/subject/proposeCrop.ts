import type { Subject } from './findSubject.ts';

/** Of the crop, what the subject fills along the axis where it is tightest, 0 to 1. */
const fill = 0.75;

/**
 * A crop of a given shape that keeps the subject whole with air around it: in the middle of the subject, three quarters
 * filled along the axis where it is tightest. Where the picture ends too soon it is moved, and where it is too small for
 * that, made smaller as far as the subject stays whole. `aspect` is width by height in pixels of the crop; `size` that of
 * the picture. The answer is left, top, width and height in shares of the picture. Null where no crop of this shape
 * within the picture holds the whole subject.
 */
export function proposeCrop(
  subject: Subject['box'],
  aspect: number,
  size: { readonly width: number; readonly height: number },
): Subject['box'] | null {
  const [left, top, wide, high] = subject;
  const [width, height] = [wide * size.width, high * size.height];
  const least = Math.max(width, height * aspect);
  const most = Math.min(size.width, size.height * aspect);
  if (!(least <= most * (1 + 1e-9))) return null;
  const across = Math.min(most, least / fill);
  const down = across / aspect;
  const place = (start: number, length: number, crop: number, limit: number) =>
    Math.min(limit - crop, Math.max(0, start + length / 2 - crop / 2)) / limit;
  return [
    place(left * size.width, width, across, size.width),
    place(top * size.height, height, down, size.height),
    across / size.width,
    down / size.height,
  ];
}
