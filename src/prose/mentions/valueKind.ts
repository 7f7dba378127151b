import type { Ref } from '#core/part.ts';
import type { QuantityKind } from '#core/quantity.ts';
import { type RefClass, refClass } from '#notation/refs.ts';

const kinds: Partial<Record<RefClass, QuantityKind>> = {
  resistor: 'resistance',
  capacitor: 'capacitance',
  inductor: 'inductance',
  crystal: 'frequency',
  fuse: 'current',
};

/** What the value of a part with this reference measures; null where its letters do not tell. */
export function valueKind(ref: Ref): QuantityKind | null {
  const kind = refClass(ref);
  return kind === null ? null : (kinds[kind] ?? null);
}
