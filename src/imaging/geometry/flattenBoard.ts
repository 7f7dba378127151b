import type { Picture } from '../pixels/picture.ts';
import { applyHomography } from './applyHomography.ts';
import type { Homography } from './homography.ts';
import { type Four, homographyOfFour } from './homographyOfFour.ts';
import { invertHomography } from './invertHomography.ts';
import type { BoardPoint, ImagePoint } from './points.ts';
import { warpPicture } from './warpPicture.ts';

/** Width and height of a board, in millimetres, as it lies in the flattened view. */
export interface BoardSize {
  readonly width: number;
  readonly height: number;
}

/** How a board lies in a photo. */
export interface BoardView {
  readonly size: BoardSize;
  /** Takes the flattened view with one pixel a millimetre, rows downwards from the top edge, to the photo. */
  readonly toPhoto: Homography;
  readonly toBoard: Homography;
}

/**
 * How a board lies in a photo, from its four corners there, clockwise from the one that is to be top left, and its size.
 * Null where three of the corners lie on a line.
 */
export function boardViewOf(corners: Four, size: BoardSize): BoardView | null {
  const { width, height } = size;
  const edges: Four = [
    { column: 0, row: 0 },
    { column: width, row: 0 },
    { column: width, row: height },
    { column: 0, row: height },
  ];
  const toPhoto = homographyOfFour(edges, corners);
  const toBoard = toPhoto && invertHomography(toPhoto);
  return toPhoto && toBoard && { size, toPhoto, toBoard };
}

/** Where a point of the board is in the photo. */
export function photoPointOf({ size, toPhoto }: BoardView, { x, y }: BoardPoint): ImagePoint {
  return applyHomography(toPhoto, { column: x, row: size.height - y });
}

/** Which point of the board a point of the photo shows, if it lies on the board's plane. */
export function boardPointOf({ size, toBoard }: BoardView, point: ImagePoint): BoardPoint {
  const { column, row } = applyHomography(toBoard, point);
  return { x: column, y: size.height - row };
}

/**
 * The board from straight above and true to scale, `pixelsPerMillimetre` everywhere: rounded to whole pixels in each
 * direction. What stands up from the board leans away from the camera as it does in the photo.
 */
export function flattenBoard(picture: Picture, view: BoardView, pixelsPerMillimetre: number): Picture {
  const width = Math.max(1, Math.round(view.size.width * pixelsPerMillimetre));
  const height = Math.max(1, Math.round(view.size.height * pixelsPerMillimetre));
  const [a, b, c, d, e, f, g, h, i] = view.toPhoto;
  const s = 1 / pixelsPerMillimetre;
  // The centre of the first pixel lies half a pixel inside the board.
  const half = s / 2;
  const fromPixels: Homography = [
    a * s,
    b * s,
    a * half + b * half + c,
    d * s,
    e * s,
    d * half + e * half + f,
    g * s,
    h * s,
    g * half + h * half + i,
  ];
  return warpPicture(picture, fromPixels, width, height).picture;
}
