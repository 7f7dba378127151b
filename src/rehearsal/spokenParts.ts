import type { Build } from '#core/build.ts';
import type { Facts } from '#core/facts.ts';
import type { PartId, Ref } from '#core/part.ts';
import { remember } from '#core/remember.ts';
import { tokensOf } from '#notation/names.ts';

/** Parts that the steps speak of, in whatever way: nothing that is spoken of was forgotten altogether. */
export interface SpokenParts {
  readonly refs: ReadonlySet<Ref>;
  /** Parts that are named as a whole, by description or in a fact that was read. */
  readonly parts: ReadonlySet<PartId>;
}

/** What joins, readings and the prose of steps name. */
export function spokenParts(build: Build, facts: Facts): SpokenParts {
  const refs = new Set<Ref>();
  const parts = new Set<PartId>();
  for (const { connects, uses } of Object.values(facts.steps)) {
    for (const { value } of connects) for (const { ref } of [value.from, value.to]) refs.add(ref);
    for (const { value, basis } of uses) {
      if (basis === 'declared') continue;
      if (value.ref !== null) refs.add(value.ref);
      else if (value.part !== null) parts.add(value.part);
    }
  }
  for (const { value } of facts.pins) refs.add(value.end.ref);
  const byFirstWord = new Map<string, { readonly id: PartId; readonly words: readonly string[] }[]>();
  for (const { id, description } of build.parts) {
    const words = tokensOf(description);
    const [first] = words;
    if (first !== undefined) byFirstWord.set(first, [...(byFirstWord.get(first) ?? []), { id, words }]);
  }
  for (const words of proseOfSteps(build)) {
    for (const ref of refsIn(words)) refs.add(ref);
    const said = new Set(tokensOf(words));
    for (const word of said) {
      for (const { id, words: telling } of byFirstWord.get(word) ?? []) {
        if (telling.every((one) => said.has(one))) parts.add(id);
      }
    }
  }
  return { refs, parts };
}

function proseOfSteps({ instructions: { sections } }: Build): string[] {
  return sections
    .filter(({ role }) => role === 'step')
    .map(({ heading, blocks }) => [heading, ...blocks.map(({ place }) => place.quote)].join('\n'));
}

/** References in running text, ranges such as R1–R4 included; what follows a dot is a pin. */
const refsIn = remember((words): readonly Ref[] => {
  const range = /(?<![\p{L}\p{N}.])([A-Z]{1,4})(\d{1,4})(?:\s*(?:[-–—…]|to)\s*\1?(\d{1,4}))?(?![\p{L}\p{N}])/gu;
  return [...words.matchAll(range)].flatMap(([, prefix = '', first = '', last = first]) => {
    const count = Math.min(Math.max(0, Number(last) - Number(first)), longestRange);
    return Array.from({ length: count + 1 }, (_, index) => `${prefix}${Number(first) + index}`);
  });
});

/** Longer ones are no range of references. */
const longestRange = 200;
