import type { StepBlock } from '#guide/guide.ts';

/** What the line is drawn from. */
type DrawnStep = Pick<StepBlock, 'number' | 'minutes' | 'powered'>;

/** Where one step lies on the line of work, as fractions of its length. */
export interface WorkSpan {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly powered: boolean;
  /** The work rests at the end of this step. */
  readonly waits: boolean;
}

/** The whole work as one line: to the scale of time at the bench where every step tells it, else step by step. */
export interface WorkLine {
  readonly scale: 'minutes' | 'steps';
  readonly spans: readonly WorkSpan[];
}

/** A step too short to see still gets this share of an even step. */
const leastShare = 0.25;

export function workLine(steps: readonly DrawnStep[]): WorkLine {
  const timed = steps.length > 0 && steps.every((step) => step.minutes !== null);
  const minutes = steps.map((step) => step.minutes?.hands ?? 0);
  const even = minutes.reduce((sum, one) => sum + one, 0) / steps.length;
  const toScale = timed && even > 0;
  const weights = minutes.map((one) => (toScale ? Math.max(one, even * leastShare) : 1));
  const total = weights.reduce((sum, one) => sum + one, 0);
  let done = 0;
  const spans = steps.map((step, i): WorkSpan => {
    const from = done / total;
    done += weights[i] ?? 0;
    const waits = (step.minutes?.wait ?? 0) > 0;
    return { number: step.number, from, to: i === steps.length - 1 ? 1 : done / total, powered: step.powered, waits };
  });
  return { scale: toScale ? 'minutes' : 'steps', spans };
}
