import type { Board } from '../board/findBoard.ts';
import type { Picture, Plane } from '../pixels/picture.ts';
import { surveyPicture } from '../pixels/surveyPicture.ts';
import { chancesOf } from './chancesOf.ts';
import { chancesByColour, closerCluesOf } from './closerCluesOf.ts';
import { cluesOf } from './cluesOf.ts';
import { type CellBox, likeliestBox, overlapOf } from './likeliestBox.ts';
import forests from './subjectForests.json' with { type: 'json' };

/** The thing that a photo is about. */
export interface Subject {
  /** Left, top, width and height as shares of the upright picture's. */
  readonly box: readonly [number, number, number, number];
  /** How likely each cell of a coarse grid belongs to the thing, 0 to 1; 0 outside the box. */
  readonly mask: Plane;
  /** The overlap (intersection over union) with the true box that is to be expected, 0 to 1. */
  readonly confidence: number;
}

/**
 * Looks for the thing that a photo is about. Each cell of a coarse grid is given its chance to lie in the subject's box
 * by decision trees over clues of contrast with the border, focus, detail and place (cluesOf); a second look compares
 * the colours within and around (closerCluesOf); the answer is the box whose overlap is expected to be largest
 * (likeliestBox). A whole board that was found is taken instead where its box is about as likely. The trees were grown by
 * gradient boosting (J. Friedman, Annals of Statistics 29(5), 2001) with bench/fitSubject.mjs on half of the
 * demo's rendered photos and on drawn scenes, and on no photo of anybody else's. Without a
 * picture to tell apart, as in an even grey, the box is a middle one of low confidence. Figures: bench/subject.mjs.
 */
export function findSubject(picture: Picture, board: Board | null): Subject {
  const survey = surveyPicture(picture, surveyed);
  const { width, height } = survey;
  const clues = cluesOf(survey);
  const first = chancesOf(forests.first, clues);
  const closer = closerCluesOf(survey, first, clues);
  const chances = chancesOf(forests.second, closer.clues);
  const likeliest = likeliestBox(chances, width, height);
  const things = chancesByColour(chances, closer.leaning);
  const answer = (box: CellBox, exact: Subject['box'], confidence: number): Subject => ({
    box: exact,
    mask: { width, height, values: things.map((chance, at) => (isIn(box, at, width) ? chance : 0)), coding: 'linear' },
    confidence,
  });
  if (board !== null) {
    const [left, top, wide, high] = boxAround(board.corners);
    const box = {
      left: Math.round(left * width),
      top: Math.round(top * height),
      right: Math.round((left + wide) * width),
      bottom: Math.round((top + high) * height),
    };
    const overlap = overlapOf(chances, width, box);
    if (overlap > aboutAsLikely * likeliest.overlap) return answer(box, [left, top, wide, high], overlap);
  }
  const { left, top, right, bottom } = likeliest.box;
  const exact = [left / width, top / height, (right - left) / width, (bottom - top) / height] as const;
  return answer(likeliest.box, exact, likeliest.overlap);
}

/** Cells along the longer side. */
export const surveyed = 80;
/** A board, whose sides are seen, is taken where its box is expected to overlap at least half as well as the likeliest. */
const aboutAsLikely = 0.5;

function isIn({ left, top, right, bottom }: CellBox, cell: number, width: number): boolean {
  const [column, row] = [cell % width, Math.floor(cell / width)];
  return column >= left && column < right && row >= top && row < bottom;
}

function boxAround(corners: Board['corners']): Subject['box'] {
  const xs = corners.map(([x]) => Math.min(1, Math.max(0, x)));
  const ys = corners.map(([, y]) => Math.min(1, Math.max(0, y)));
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return [left, top, Math.max(...xs) - left, Math.max(...ys) - top];
}
