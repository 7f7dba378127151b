import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';

/** A picture that could not be used. A reason closes with what to do about it, where there is something to do. */
export function pictureProblem(file: Path, reason: string): Problem {
  const last = reason.lastIndexOf('. ');
  return {
    place: { kind: 'file', file },
    message: last < 0 ? reason : reason.slice(0, last + 1),
    remedy: last < 0 ? 'Replace the picture, or leave it out of the guide.' : reason.slice(last + 2),
  };
}
