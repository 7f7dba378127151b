import type { Claim } from '#core/claim.ts';
import type { PartId } from '#core/part.ts';
import type { Amount } from '#core/quantity.ts';
import type { PartUse, StepFacts } from '#core/step.ts';
import type { BlockId, Needs, PartNeed, PartRow, ToolRow } from './guide.ts';
import { stated } from './stepMarks.ts';

/** The tables and files of the guide that a step can point into. */
export interface Inventory {
  readonly parts: readonly PartRow[];
  readonly tools: readonly ToolRow[];
  /** Block of each published source file, by path. */
  readonly code: ReadonlyMap<string, BlockId>;
}

/** What must lie on the bench before the step begins. */
export function composeNeeds(facts: StepFacts, inventory: Inventory): Needs {
  return {
    parts: composePartNeeds(stated(facts.uses), inventory.parts),
    tools: stated(facts.tools).map(({ value: name }) => ({ name, row: rowOfTool(name, inventory.tools) })),
    code: stated(facts.loads).map(({ value }) => ({
      path: value.path,
      onto: value.onto,
      block: blockOfCode(value.path, inventory.code),
    })),
    power: facts.power && stated([facts.power]).length > 0 ? facts.power.value : null,
  };
}

/** Uses of one part come together, in the order in which the step first names them. */
function composePartNeeds(uses: readonly Claim<PartUse>[], rows: readonly PartRow[]): PartNeed[] {
  const needs = new Map<PartId, PartNeed>();
  for (const { value: use } of uses) {
    const key = JSON.stringify([use.part ?? use.named, use.amount.unit]);
    const before = needs.get(key);
    const row = rows.find((candidate) => candidate.part === use.part);
    needs.set(key, {
      row: row?.id ?? null,
      refs: [...(before?.refs ?? []), ...(use.ref === null ? [] : [use.ref])],
      amount: before ? sum(before.amount, use.amount) : use.amount,
      named: row?.description || use.named,
      value: row?.value ?? null,
    });
  }
  return [...needs.values()];
}

function sum(a: Amount, b: Amount): Amount {
  return { n: a.n + b.n, unit: a.unit, approximate: a.approximate || b.approximate };
}

function rowOfTool(name: string, rows: readonly ToolRow[]): BlockId | null {
  return rows.find((row) => row.name.toLowerCase() === name.toLowerCase())?.id ?? null;
}

/** A step may load a file, or a folder that holds several. */
function blockOfCode(path: string, code: ReadonlyMap<string, BlockId>): BlockId | null {
  const inFolder = [...code].find(([file]) => file.startsWith(`${path.replace(/\/$/, '')}/`));
  return code.get(path) ?? inFolder?.[1] ?? null;
}
