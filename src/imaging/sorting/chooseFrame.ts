import { assert } from '#core/failure.ts';

/** What was measured of one frame of a group. */
export interface FrameMeasures {
  readonly id: string;
  /** Sharpness of the subject, above 0, higher is sharper; comparable within the group. */
  readonly focus: number;
  /** Error of the exposure in stops, negative for too dark. */
  readonly exposure: number;
  /** Clutter round the subject, 0 (clear) to 1. */
  readonly clutter: number;
}

/** Which frame to take, and what told it from the others: as sharp, then as well exposed, then as clear as any. */
export interface ChosenFrame {
  readonly id: string;
  readonly reason: 'only' | 'sharpest' | 'best-exposed' | 'clearest' | 'first';
}

/** Frames with this share of the sharpest frame's focus are as sharp to the eye. */
const asSharp = 0.8;
/** Frames with this share are worth a correction of focus against one of exposure. */
const sharpEnough = 0.5;
/** An error of so many stops costs more than correcting it gives back: noise in the dark, white that is gone. */
const spoilt = 1;
/** Stops that make no difference to the eye. */
const asExposed = 0.3;
const asClear = 0.05;

/**
 * The frame of a group to choose. A frame that is more than a stop off gives way to one that is not and that has at least
 * half of its focus; of what is left the sharp ones, of these the best exposed ones, of these the clearest, of these
 * the first.
 */
export function chooseFrame(frames: readonly FrameMeasures[]): ChosenFrame {
  const [first] = frames;
  assert(first !== undefined, 'a group has frames');
  if (frames.length === 1) return { id: first.id, reason: 'only' };
  const usable = usableOf(frames);
  const sharp = near(
    usable,
    (frame) => frame.focus,
    (value, best) => value >= asSharp * best,
    true,
  );
  if (sharp.length === 1) return chosen(sharp, usable.length === 1 ? 'best-exposed' : 'sharpest', first);
  const exposed = near(
    sharp,
    (frame) => Math.abs(frame.exposure),
    (value, best) => value <= best + asExposed,
    false,
  );
  if (exposed.length === 1) return chosen(exposed, 'best-exposed', first);
  const clear = near(
    exposed,
    (frame) => frame.clutter,
    (value, best) => value <= best + asClear,
    false,
  );
  return chosen(clear, reasonOfLast(frames.length, sharp.length, exposed.length, clear.length), first);
}

function usableOf(frames: readonly FrameMeasures[]): readonly FrameMeasures[] {
  const sharpest = Math.max(...frames.map((frame) => frame.focus));
  const right = frames.filter(({ exposure, focus }) => Math.abs(exposure) <= spoilt && focus >= sharpEnough * sharpest);
  return right.length > 0 ? right : frames;
}

function near(
  frames: readonly FrameMeasures[],
  of: (frame: FrameMeasures) => number,
  isNear: (value: number, best: number) => boolean,
  highest: boolean,
): readonly FrameMeasures[] {
  const values = frames.map(of);
  const best = highest ? Math.max(...values) : Math.min(...values);
  return frames.filter((frame) => isNear(of(frame), best));
}

function chosen([frame]: readonly FrameMeasures[], reason: ChosenFrame['reason'], first: FrameMeasures): ChosenFrame {
  return { id: (frame ?? first).id, reason };
}

/** Of several that are left, what last told them from others. */
function reasonOfLast(all: number, sharp: number, exposed: number, clear: number): ChosenFrame['reason'] {
  if (clear < exposed) return 'clearest';
  if (exposed < sharp) return 'best-exposed';
  return sharp < all ? 'sharpest' : 'first';
}
