import type { Slopes } from './scharr.ts';

/** Fields to a degree, over the quarter turn that lines along and across share. */
const fieldsPerDegree = 4;
const fields = 90 * fieldsPerDegree;
/** A line leaves at least this change, in Scharr's units of values from 0 to 1; more than the second counts no more. */
const [faintest, strongest] = [0.3, 1.2];
/** Lines within this many degrees are of one direction. */
const spread = 1.5;
/** The lines of the direction found make up at least this share of all, or there is no direction. */
const dominant = 0.1;
/** Further from the frame than this, in degrees, a thing was laid aslant on purpose. */
const furthest = 15;

/**
 * How far the lines that most things follow lean from the frame, in degrees, clockwise above 0, −15 to 15; null where no
 * direction stands out. A histogram of gradient directions, folded to a quarter turn. Truth: turned gratings.
 */
export function measureTilt({ across, down }: Slopes): number | null {
  const table = new Float64Array(fields);
  let total = 0;
  for (let at = 0; at < across.length; at++) {
    const [x, y] = [across[at] ?? 0, down[at] ?? 0];
    const strength = x * x + y * y;
    if (strength < faintest * faintest) continue;
    const weight = Math.min(strongest, Math.sqrt(strength));
    const quarters = (Math.atan2(y, x) / Math.PI) * 2 + 2;
    const field = Math.floor((quarters - Math.floor(quarters)) * fields) % fields;
    table[field] = (table[field] ?? 0) + weight;
    total += weight;
  }
  if (total === 0) return null;
  let best = { tilt: 0, weight: 0 };
  for (let middle = -furthest * fieldsPerDegree; middle <= furthest * fieldsPerDegree; middle++) {
    const here = windowAt(table, middle);
    if (here.weight > best.weight) best = here;
  }
  return best.weight >= dominant * total ? best.tilt : null;
}

/** Weight round a field, and the mean direction there, in degrees. */
function windowAt(table: Float64Array, middle: number): { tilt: number; weight: number } {
  const half = spread * fieldsPerDegree;
  let [weight, sum] = [0, 0];
  for (let field = middle - half; field <= middle + half; field++) {
    const amount = table[(field + fields) % fields] ?? 0;
    weight += amount;
    sum += (amount * (field + 0.5)) / fieldsPerDegree;
  }
  return { tilt: weight === 0 ? 0 : sum / weight, weight };
}
