import type { Action } from '#core/action.ts';
import type { Facts } from '#core/facts.ts';
import { rememberFor } from '#core/remember.ts';
import type { StepId } from '#core/step.ts';

/** The work that one step speaks of, in reading order. */
export function actionsOfStep({ actions }: Pick<Facts, 'actions'>, step: StepId): readonly Action[] {
  return byStep(actions).get(step) ?? [];
}

const byStep = rememberFor((actions: readonly Action[]): ReadonlyMap<StepId | null, readonly Action[]> => {
  const steps = new Map<StepId | null, Action[]>();
  for (const action of actions) {
    const here = steps.get(action.step);
    if (here === undefined) steps.set(action.step, [action]);
    else here.push(action);
  }
  return steps;
});
