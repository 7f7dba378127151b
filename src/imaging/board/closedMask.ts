/**
 * A mask with gaps and holes narrower than twice the radius filled, and what is thinner than that afterwards worn away:
 * a closing and then an opening by a square (J. Serra, "Image Analysis and Mathematical Morphology", 1982). Outside the
 * picture nothing is set.
 */
export function closedMask(mask: Uint8Array, width: number, height: number, radius: number): Uint8Array {
  const wide = { radius, width, height };
  const closed = spread(spread(mask, wide, 1), wide, 0);
  return spread(spread(closed, wide, 0), wide, 1);
}

/** Takes `value` wherever a cell within the radius, across or down, has it. */
function spread(
  mask: Uint8Array,
  { width, height, radius }: { width: number; height: number; radius: number },
  value: 0 | 1,
): Uint8Array {
  const across = new Uint8Array(mask.length);
  for (let row = 0; row < height; row++) spreadLine(mask, across, row * width, 1, width, radius, value);
  const down = new Uint8Array(mask.length);
  for (let column = 0; column < width; column++) spreadLine(across, down, column, width, height, radius, value);
  return down;
}

function spreadLine(
  from: Uint8Array,
  to: Uint8Array,
  start: number,
  step: number,
  count: number,
  radius: number,
  value: 0 | 1,
): void {
  let found = 0;
  for (let index = -radius; index < count; index++) {
    const ahead = index + radius;
    const behind = index - radius - 1;
    if (ahead < count && from[start + ahead * step] === value) found++;
    if (behind >= 0 && from[start + behind * step] === value) found--;
    if (index >= 0) to[start + index * step] = found > 0 ? value : 1 - value;
  }
}
