import { radians } from './sceneCamera.mjs';

/** A point of a thing where the thing stands in its scene: rotated about x, y and z, turned about y, then moved. */
export function placeIn(thing, point) {
  const [rx, ry, rz] = thing.rotate ?? [0, 0, 0];
  const turns = [
    [1, 2, rx],
    [2, 0, ry],
    [0, 1, rz],
    [2, 0, thing.turn ?? 0],
  ];
  const rotated = [...point];
  for (const [a, b, degrees] of turns) {
    const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
    [rotated[a], rotated[b]] = [rotated[a] * c - rotated[b] * s, rotated[a] * s + rotated[b] * c];
  }
  return rotated.map((v, k) => v + (thing.at?.[k] ?? 0));
}

/** The eight corners of a box given by its lowest and highest corner. */
export function cornersOf([low, high]) {
  return [0, 1, 2, 3, 4, 5, 6, 7].map((n) => [0, 1, 2].map((k) => ((n >> k) & 1 ? high[k] : low[k])));
}
