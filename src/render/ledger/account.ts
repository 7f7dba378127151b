import type { Judged } from '#core/assembled.ts';
import type { Finding, Verdict } from '#core/finding.ts';
import type { LedgerStep, State } from '#core/ledger.ts';
import { formatMinutes, formatWork } from '#guide/formatMinutes.ts';
import { type Change, changeOf } from '#rehearsal/changeOf.ts';
import { type WorkLine, workLine } from '../shared/workLine.ts';

/** One step of the account. */
export interface Entry {
  /** The name to link to. */
  readonly id: string;
  readonly number: number;
  readonly heading: string;
  readonly before: State;
  readonly after: State;
  readonly change: Change;
  readonly stops: readonly Finding[];
  /** What the step takes, in words; empty where it does not tell. */
  readonly minutes: string;
  /** When it begins and ends, in words; null where an earlier step tells no time. */
  readonly begins: string | null;
  readonly ends: string | null;
  readonly tools: readonly string[];
  readonly variant: string | null;
  readonly isOptional: boolean;
}

/** Everything that the page tells. */
export interface Account {
  readonly judged: Judged;
  readonly title: string;
  readonly verdict: Verdict;
  readonly entries: readonly Entry[];
  readonly line: WorkLine;
  /** Findings that belong to no step. */
  readonly atEnd: readonly Finding[];
  readonly stops: readonly Finding[];
  readonly asOf: string;
}

export function accountOf(judged: Judged, findings: readonly Finding[], verdict: Verdict): Account {
  const { build, ledger, facts } = judged;
  const entries = ledger.steps.map((step, index) => entryOf(judged, findings, step, index));
  const told = new Set(entries.flatMap(({ stops }) => stops.map(({ id }) => id)));
  return {
    judged,
    title: build.settings.title ?? build.instructions.title ?? build.name,
    verdict,
    entries,
    line: workLine(
      ledger.steps.map(({ step, before, after }, index) => ({
        number: index + 1,
        minutes: facts.steps[step]?.minutes?.value ?? null,
        powered: before.powered || after.powered,
      })),
    ),
    atEnd: findings.filter(({ id }) => !told.has(id)),
    stops: findings,
    asOf: judged.asOf.slice(0, 10),
  };
}

function entryOf({ build, facts }: Judged, findings: readonly Finding[], told: LedgerStep, index: number): Entry {
  const { step, before, after } = told;
  const own = facts.steps[step];
  const minutes = own?.minutes?.value ?? null;
  return {
    id: `step-${index + 1}`,
    number: index + 1,
    heading: build.instructions.sections.find(({ id }) => id === step)?.heading ?? step,
    before,
    after,
    change: changeOf(before, after),
    stops: findings.filter(({ subjects }) => subjects.find((key) => key.startsWith('step:')) === `step:${step}`),
    minutes: minutes === null ? '' : formatWork(minutes),
    begins: timeAt(before),
    ends: timeAt(after),
    tools: own?.tools.filter(({ basis }) => basis === 'declared').map(({ value }) => value) ?? [],
    variant: own?.variant?.value ?? null,
    isOptional: own?.optional != null,
  };
}

function timeAt({ clock }: State): string | null {
  return clock.untold > 0 ? null : formatMinutes(clock.hands + clock.wait);
}
