import type { Homography } from '../geometry/homography.ts';
import { warpPlane } from '../geometry/warpPlane.ts';
import type { AlignableLevel } from './alignableOf.ts';

/** How far two pictures show the same where one view lays them over one another, in square fields. */
export interface Agreement {
  readonly field: number;
  readonly columns: number;
  readonly rows: number;
  /** Correlation of each field, −1 to 1; NaN where nothing can be told: outside, or nothing to be seen. */
  readonly fields: Float32Array;
  /** Fields in which something can be told. */
  readonly told: number;
  /** Of those, the fields that correlate by more than a half. */
  readonly agreeing: number;
  /** Share of the second picture that lies in the first. */
  readonly overlap: number;
}

/** Spread of luma in a field, 0 to 1, from which on something is to be seen in it. */
const visible = 0.012;

/**
 * Correlates two pictures field by field of the second one's plane, luma without its light. `view` takes points of the
 * second to those of the first.
 */
export function agreementOf(first: AlignableLevel, second: AlignableLevel, view: Homography): Agreement {
  const { width, height, values } = second.even;
  const field = Math.max(8, Math.round(width / 24));
  const seen = warpPlane(first.even, view, width, height);
  const luma = warpPlane(first.luma, view, width, height);
  const columns = Math.floor(width / field);
  const rows = Math.floor(height / field);
  const fields = new Float32Array(columns * rows).fill(Number.NaN);
  let told = 0;
  let agreeing = 0;
  let inside = 0;
  for (let i = 0; i < fields.length; i++) {
    const start = Math.floor(i / columns) * field * width + (i % columns) * field;
    const each = spreadsOf(seen, values, start, width, field);
    if (!each) continue;
    inside++;
    const light = spreadsOf(luma, second.luma.values, start, width, field);
    if (!light || Math.max(light.first, light.second) < visible) continue;
    const correlation = each.product / Math.max(each.first * each.second, 1e-6);
    fields[i] = correlation;
    told++;
    if (correlation > 0.5) agreeing++;
  }
  return { field, columns, rows, fields, told, agreeing, overlap: inside / fields.length };
}

/** Spreads and covariance within a field; null where it is not wholly in view. */
function spreadsOf(a: Float32Array, b: Float32Array, start: number, width: number, field: number) {
  let [sumA, sumB, squareA, squareB, product] = [0, 0, 0, 0, 0];
  for (let row = 0; row < field; row++) {
    for (let at = start + row * width; at < start + row * width + field; at++) {
      const p = a[at] ?? 0;
      const q = b[at] ?? 0;
      sumA += p;
      sumB += q;
      squareA += p * p;
      squareB += q * q;
      product += p * q;
    }
  }
  if (Number.isNaN(sumA)) return null;
  const count = field * field;
  return {
    first: Math.sqrt(Math.max(0, squareA / count - (sumA / count) ** 2)),
    second: Math.sqrt(Math.max(0, squareB / count - (sumB / count) ** 2)),
    product: product / count - (sumA / count) * (sumB / count),
  };
}
