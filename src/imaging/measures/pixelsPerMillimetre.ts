/** A place in an upright picture, in fractions of its width and height. */
export type Corner = readonly [x: number, y: number];

/** The four corners of a board, clockwise from the top left. */
export type Corners = readonly [Corner, Corner, Corner, Corner];

/**
 * How large a millimetre of the board is shown, in pixels: √(area of the corners in pixels / area of the board), the mean
 * over a board that is seen aslant. Null where the corners enclose nothing or the size is none. Truth: closed form.
 */
export function pixelsPerMillimetre(
  corners: Corners,
  picture: { readonly width: number; readonly height: number },
  board: { readonly width: number; readonly height: number },
): number | null {
  let twice = 0;
  for (const [at, [x, y]] of corners.entries()) {
    const [nextX, nextY] = corners[((at + 1) % 4) as 0 | 1 | 2 | 3];
    twice += x * nextY - nextX * y;
  }
  const pixels = (Math.abs(twice) / 2) * picture.width * picture.height;
  const millimetres = board.width * board.height;
  return pixels > 0 && millimetres > 0 ? Math.sqrt(pixels / millimetres) : null;
}
