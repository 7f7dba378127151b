import type { Build } from '#core/build.ts';
import type { Coverage } from '#core/ledger.ts';
import { netsOf } from './nets.ts';
import { sameTool } from './sameTool.ts';
import type { ScriptStep } from './script.ts';

/** Below this share a guide does not declare facts of a kind; what it leaves out then means nothing. */
export const declaresEnough = 0.5;

/** How much of lists and wiring the steps declare, each as a share from 0 to 1; null where a list is empty. */
export function measureCoverage(build: Build, script: readonly ScriptStep[]): Coverage {
  const used = new Set(script.flatMap(({ facts }) => facts.uses.map(({ value }) => value.part)));
  const made = netsOf(script.flatMap(({ facts }) => facts.connects.map(({ value }) => value)));
  const byName = new Set(script.flatMap(({ facts }) => facts.connects.map(({ value }) => value.connection)));
  const named = script.flatMap(({ facts }) => facts.tools.map(({ value }) => value));
  return {
    parts: shareOf(
      build.parts.filter(({ fitted }) => fitted),
      ({ id }) => used.has(id),
    ),
    connections: shareOf(build.connections, ({ id, from, to }) => byName.has(id) || made.joined(from, to)),
    tools: shareOf(
      build.tools.filter(({ needed }) => needed),
      ({ name }) => named.some((tool) => sameTool(tool, name)),
    ),
  };
}

function shareOf<T>(all: readonly T[], isCovered: (one: T) => boolean): number | null {
  return all.length === 0 ? null : all.filter(isCovered).length / all.length;
}
