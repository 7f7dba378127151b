/**
 * A place in a picture, in pixels: column to the right and row downwards, from the centre of the first pixel. The
 * picture ends half a pixel outside the centres of its outer pixels.
 */
export interface ImagePoint {
  readonly column: number;
  readonly row: number;
}

/** A place on a board, in millimetres from its lower left corner: x to the right, y up. */
export interface BoardPoint {
  readonly x: number;
  readonly y: number;
}
