/** A connected part of a mask. */
export interface Region {
  readonly area: number;
  /** Whether a cell of it lies at the picture's edge. */
  readonly isCut: boolean;
  /** In each row that it reaches, its first and its last cell. */
  readonly spans: readonly { readonly row: number; readonly first: number; readonly last: number }[];
}

/** The parts of a mask that hang together across or down, from the top; those of fewer cells than `least` are left out. */
export function regionsOf(mask: Uint8Array, width: number, height: number, least: number): readonly Region[] {
  const open = mask.slice();
  const waiting = new Uint32Array(mask.length);
  const [firsts, lasts] = [new Int32Array(height), new Int32Array(height)];
  const regions: Region[] = [];
  for (let start = 0; start < mask.length; start++) {
    if (open[start] !== 1) continue;
    firsts.fill(width);
    lasts.fill(-1);
    open[start] = 0;
    waiting[0] = start;
    let [area, count] = [0, 1];
    while (count > 0) {
      const cell = waiting[--count] ?? 0;
      const row = Math.floor(cell / width);
      const column = cell - row * width;
      area++;
      if (column < (firsts[row] ?? 0)) firsts[row] = column;
      if (column > (lasts[row] ?? 0)) lasts[row] = column;
      if (column > 0 && open[cell - 1] === 1) {
        open[cell - 1] = 0;
        waiting[count++] = cell - 1;
      }
      if (column < width - 1 && open[cell + 1] === 1) {
        open[cell + 1] = 0;
        waiting[count++] = cell + 1;
      }
      if (row > 0 && open[cell - width] === 1) {
        open[cell - width] = 0;
        waiting[count++] = cell - width;
      }
      if (row < height - 1 && open[cell + width] === 1) {
        open[cell + width] = 0;
        waiting[count++] = cell + width;
      }
    }
    if (area >= least) regions.push(regionFrom(area, firsts, lasts, width, height));
  }
  return regions;
}

function regionFrom(area: number, firsts: Int32Array, lasts: Int32Array, width: number, height: number): Region {
  const spans = Array.from(firsts, (first, row) => ({ row, first, last: lasts[row] ?? -1 })).filter(
    ({ first, last }) => first <= last,
  );
  const isCut = spans.some(({ row, first, last }) => {
    return row === 0 || row === height - 1 || first === 0 || last === width - 1;
  });
  return { area, isCut, spans };
}
