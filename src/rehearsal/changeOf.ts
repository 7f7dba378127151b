import type { State } from '#core/ledger.ts';
import type { PartId } from '#core/part.ts';
import type { Hazard } from '#core/step.ts';
import { round } from './amounts.ts';

/** What a step changed on the bench; empty lists where nothing did. */
export interface Change {
  readonly parts: readonly { readonly part: PartId; readonly before: number; readonly after: number }[];
  readonly tools: readonly string[];
  /** Connections and sub-assemblies that are new, and those that are gone. */
  readonly made: readonly string[];
  readonly gone: readonly string[];
  readonly loaded: readonly string[];
  readonly warned: readonly Hazard[];
  readonly explained: readonly string[];
}

/** What differs between two states of the bench, the later one second. */
export function changeOf(before: State, after: State): Change {
  return {
    parts: Object.entries(before.bag)
      .map(([part, had]) => ({ part, before: had, after: round(after.bag[part] ?? 0) }))
      .filter((one) => one.before !== one.after),
    tools: added(before.tools, after.tools),
    made: added(before.made, after.made),
    gone: added(after.made, before.made),
    loaded: added(before.loaded, after.loaded),
    warned: after.warned.slice(before.warned.length),
    explained: added(before.explained, after.explained),
  };
}

/** What the later list has more of; a name may stand in it several times. */
function added(before: readonly string[], after: readonly string[]): string[] {
  const rest = [...before];
  return after.filter((name) => {
    const at = rest.indexOf(name);
    if (at >= 0) rest.splice(at, 1);
    return at < 0;
  });
}
