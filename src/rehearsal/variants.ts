import type { Claim } from '#core/claim.ts';
import type { Stop } from '#core/ledger.ts';
import type { ScriptStep } from './script.ts';
import { type VariantKey, variantKey } from './variantKey.ts';

/** Variants in the order in which the guide first names them. */
export function variantKeysOf(script: readonly ScriptStep[]): VariantKey[] {
  return [...new Set(script.flatMap(({ variants }) => variants ?? []))];
}

/** What the builder of one variant follows. */
export function scriptFor(script: readonly ScriptStep[], variant: VariantKey | null): ScriptStep[] {
  return script.filter(({ variants }) => variants === null || (variant !== null && variants.includes(variant)));
}

/** Names of the variants as first written. */
export function variantNames(script: readonly ScriptStep[]): string[] {
  return variantKeysOf(script).map((key) => claimOf(script, key)?.value.trim() ?? key);
}

/** A variant that one step alone names, a letter or two apart from one that others name: perhaps a slip. */
export function findLonelyVariants(script: readonly ScriptStep[]): Stop[] {
  const keys = variantKeysOf(script);
  const stepsOf = (key: VariantKey) => script.filter(({ variants }) => variants?.includes(key));
  return keys.flatMap((key): Stop[] => {
    const [own, ...more] = stepsOf(key);
    const claim = own?.facts.variant ?? null;
    if (own === undefined || more.length > 0 || claim === null) return [];
    const like = keys.find((other) => other !== key && stepsOf(other).length > 1 && isNear(key, other));
    const other = like === undefined ? null : claimOf(script, like);
    if (other === null) return [];
    return [{ kind: 'variant-named-once', step: own.id, claim, name: claim.value, like: other.value, other }];
  });
}

function claimOf(script: readonly ScriptStep[], key: VariantKey): Claim<string> | null {
  const alone = script.find(({ facts }) => variantKey(facts.variant?.value ?? '') === key);
  return (alone ?? script.find(({ variants }) => variants?.includes(key)))?.facts.variant ?? null;
}

/** One slip of the keyboard apart, in words long enough for that to mean something, numbers aside: 'V1' is not 'V2'. */
function isNear(a: string, b: string): boolean {
  const digits = (text: string) => text.replace(/\D+/g, ' ').trim();
  return Math.min(a.length, b.length) >= 4 && digits(a) === digits(b) && isOneSlip(a, b);
}

/** One letter more, less, other, or two neighbours swapped. */
function isOneSlip(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  let at = 0;
  while (at < short.length && short[at] === long[at]) at++;
  if (long.length - short.length === 1) return short.slice(at) === long.slice(at + 1);
  if (long.length !== short.length || short === long) return false;
  const isSwap = short[at] === long[at + 1] && short[at + 1] === long[at] && short.slice(at + 2) === long.slice(at + 2);
  return isSwap || short.slice(at + 1) === long.slice(at + 1);
}
