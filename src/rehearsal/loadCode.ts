import type { Bench } from './bench.ts';
import type { ScriptStep } from './script.ts';

/** Puts the step's code onto its boards. Of programs that a later step loads, the last one runs. */
export function loadCode(bench: Bench, step: ScriptStep): void {
  for (const claim of step.facts.loads) {
    const { path, onto, exists } = claim.value;
    if (!exists) bench.stops.push({ kind: 'code-missing', step: step.id, claim, path });
    const stays = bench.loaded.filter(
      (before) => before.step === step.id || before.onto !== onto || !isWhole(path) || !isWhole(before.path),
    );
    bench.loaded.splice(0, bench.loaded.length, ...stays, { path, onto, step: step.id });
  }
}

/** Scripts lie side by side on a board; a program takes the place of the one before. */
function isWhole(path: string): boolean {
  return /\.(?:ino|pde|c|cc|cpp|hex|bin|uf2|elf|rs)$/i.test(path);
}
