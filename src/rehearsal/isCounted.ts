import type { Claim } from '#core/claim.ts';
import type { PartUse } from '#core/step.ts';

/** Whether the step says how many, as 'M3 screw × 4' does: then they are taken, not merely named again. */
export function isCounted({ value, places }: Claim<Pick<PartUse, 'named' | 'amount'>>): boolean {
  const words = [value.named, ...places.map((place) => (place.kind === 'text' ? place.quote : ''))];
  return value.amount.n !== 1 || words.some((text) => /(?:^|\s)1\s*[×x]|[×x]\s*1(?:\s|$)/i.test(text));
}
