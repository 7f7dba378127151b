import { labFromLinear } from '../colour/labFromLinear.ts';
import { linearOf, luminanceWeights, type Picture } from './picture.ts';

/** A picture in few cells, row by row, each the mean of the pixels in it. */
export interface Survey {
  readonly width: number;
  readonly height: number;
  /** CIELAB, D65, of the mean linear light: lightness 0 to 100. */
  readonly l: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
  /** Mean step of luma, 0 to 1, from a pixel to the next in its row and in its column: high where fine detail is sharp. */
  readonly detail: Float32Array;
}

/** Cells along the longer side at most `side`; a smaller picture keeps its pixels as cells. */
export function surveyPicture({ width, height, rgb }: Picture, side: number): Survey {
  const shrink = Math.max(1, Math.max(width, height) / side);
  const [wide, high] = [Math.max(1, Math.round(width / shrink)), Math.max(1, Math.round(height / shrink))];
  const cells = wide * high;
  const sums = { red: new Float64Array(cells), green: new Float64Array(cells), blue: new Float64Array(cells) };
  const [steps, counts] = [new Float64Array(cells), new Uint32Array(cells)];
  const starts = Uint32Array.from({ length: wide + 1 }, (_, column) => Math.ceil((column * width) / wide));
  const luma = lumaTables();
  const above = new Float32Array(width);
  for (let row = 0, at = 0; row < height; row++) {
    const first = Math.floor((row * high) / height) * wide;
    let before = 0;
    for (let cell = first, start = 0; cell < first + wide; cell++) {
      const end = starts[cell - first + 1] ?? width;
      let [reds, greens, blues, change] = [0, 0, 0, 0];
      for (let column = start; column < end; column++, at += 3) {
        const [red, green, blue] = [rgb[at] ?? 0, rgb[at + 1] ?? 0, rgb[at + 2] ?? 0];
        reds += linearOf[red] ?? 0;
        greens += linearOf[green] ?? 0;
        blues += linearOf[blue] ?? 0;
        const here = (luma.red[red] ?? 0) + (luma.green[green] ?? 0) + (luma.blue[blue] ?? 0);
        if (column > 0) change += Math.abs(here - before);
        if (row > 0) change += Math.abs(here - (above[column] ?? 0));
        above[column] = here;
        before = here;
      }
      sums.red[cell] = (sums.red[cell] ?? 0) + reds;
      sums.green[cell] = (sums.green[cell] ?? 0) + greens;
      sums.blue[cell] = (sums.blue[cell] ?? 0) + blues;
      steps[cell] = (steps[cell] ?? 0) + change / 2;
      counts[cell] = (counts[cell] ?? 0) + end - start;
      start = end;
    }
  }
  const survey = {
    width: wide,
    height: high,
    l: new Float32Array(cells),
    a: new Float32Array(cells),
    b: new Float32Array(cells),
    detail: new Float32Array(cells),
  };
  for (let cell = 0; cell < cells; cell++) {
    const count = counts[cell] ?? 1;
    const meanOf = (sum: Float64Array) => (sum[cell] ?? 0) / count;
    const { l, a, b } = labFromLinear(meanOf(sums.red), meanOf(sums.green), meanOf(sums.blue));
    survey.l[cell] = l;
    survey.a[cell] = a;
    survey.b[cell] = b;
    survey.detail[cell] = meanOf(steps);
  }
  return survey;
}

function lumaTables() {
  const [red, green, blue] = luminanceWeights;
  const tableOf = (weight: number) => Float32Array.from({ length: 256 }, (_, code) => (weight * code) / 255);
  return { red: tableOf(red), green: tableOf(green), blue: tableOf(blue) };
}
