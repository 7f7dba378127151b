import type { Claim } from '#core/claim.ts';
import type { PartUse, StepId } from '#core/step.ts';
import { parseItem } from '#notation/items.ts';
import { assemblyName } from './assemblyName.ts';
import { isCounted } from './isCounted.ts';
import type { ScriptStep } from './script.ts';

/** A sub-assembly on the bench. */
export interface Assembly {
  readonly named: string;
  /** The step that made it first. */
  readonly maker: StepId;
  readonly claim: Claim<string>;
  /** Parts that the making step took up: they come back when it is taken apart. */
  readonly parts: readonly PartUse[];
  /** Whether a step said how many are made. */
  counted: boolean;
  made: number;
  /** Of those that steps take by number. */
  taken: number;
  /** Whether a step ever took it up, and whether it is part of something now. */
  wasUsed: boolean;
  isBuiltIn: boolean;
}

/** Sub-assemblies by name as compared. */
export interface Assemblies {
  find(name: string): Assembly | null;
  make(claim: Claim<string>, step: ScriptStep): void;
  /** Gone from the bench. */
  drop(name: string): void;
  /** As written. */
  names(): string[];
  all(): readonly Assembly[];
}

/** The bench before anything was put together. */
export function noAssemblies(): Assemblies {
  const all = new Map<string, Assembly>();
  return {
    find: (name) => all.get(assemblyName(name)) ?? null,
    make(claim, step) {
      const { amount } = parseItem(claim.value);
      const counted = isCounted({ ...claim, value: { named: claim.value, amount } });
      const before = all.get(assemblyName(claim.value));
      if (before !== undefined) {
        before.made += amount.n;
        before.counted ||= counted;
        return;
      }
      all.set(assemblyName(claim.value), {
        named: claim.value,
        maker: step.id,
        claim,
        parts: step.facts.uses.map(({ value }) => value),
        counted,
        made: amount.n,
        taken: 0,
        wasUsed: false,
        isBuiltIn: false,
      });
    },
    drop: (name) => void all.delete(assemblyName(name)),
    all: () => [...all.values()],
    names: () => [...all.values()].map(({ named }) => named),
  };
}
