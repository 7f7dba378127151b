/** A bar that tells the scale of a drawing: its whole length, and in how many equal parts it is drawn. */
export interface ScaleBar {
  readonly millimetres: number;
  readonly parts: number;
}

/** The longest of 1, 2, 5, 10, 20, 50 … mm that takes at most half of the width, in millimetres. */
export function scaleBarOf(width: number): ScaleBar {
  const room = width / 2;
  const decade = 10 ** Math.floor(Math.log10(room));
  const step = [5, 2, 1].find((one) => one * decade <= room) ?? 1;
  return { millimetres: Number((step * decade).toPrecision(1)), parts: step === 2 ? 4 : 5 };
}
