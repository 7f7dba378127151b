import { type Picture, pictureFrom } from '#imaging/pixels/picture.ts';

/** A stream of random numbers that is the same each time. */
export function randomFrom(seed: number) {
  let state = seed >>> 0;
  const next = () => {
    // Numerical Recipes' linear congruential generator: its high bits are good enough to draw with.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  return {
    next,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}

/** A picture of three unlike channels, of random codes. */
export function randomPicture(width: number, height: number, seed: number): Picture {
  const random = randomFrom(seed);
  return pictureFrom(
    width,
    height,
    Uint8Array.from({ length: 3 * width * height }, () => Math.floor(256 * random.next())),
  );
}
