import type { Quantity } from '#core/quantity.ts';

/** Whether two quantities measure the same thing and differ by at most one part in a million. */
export function sameQuantity(a: Quantity, b: Quantity): boolean {
  return a.kind === b.kind && Math.abs(a.si - b.si) <= 1e-6 * Math.max(Math.abs(a.si), Math.abs(b.si));
}
