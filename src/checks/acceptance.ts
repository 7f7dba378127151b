import type { Finding } from '#core/finding.ts';
import type { Acceptance, Settings } from '#core/settings.ts';

/** Reasons that need no words of the maker's own: what `accepted` keeps, and how it reads. */
export const stockReasons = {
  meant: 'It is meant so.',
  known: 'Known; it stays as it is for now.',
  'no-fault': 'There is no fault here.',
} as const satisfies Readonly<Record<string, string>>;

export type StockReason = keyof typeof stockReasons;

/** Refusals of a rule after which it weighs less. */
const refusalsToLower = 2;

/** A reason as it reads: a stock one in full, one of the maker's own as it is. */
export function reasonInWords(reason: string): string {
  return reason in stockReasons ? stockReasons[reason as StockReason] : reason;
}

/** The acceptance that holds for a finding: its name, and every side says what it said then. */
export function acceptanceOf(finding: Finding, settings: Settings): Acceptance | null {
  const now = joined(digestsOf(finding));
  return namedFor(finding, settings).find(({ digests }) => joined(digests) === now) ?? null;
}

/** The acceptance of a finding of that name of which a side has changed since. */
export function lapsedAcceptanceOf(finding: Finding, settings: Settings): Acceptance | null {
  return acceptanceOf(finding, settings) === null ? (namedFor(finding, settings).at(-1) ?? null) : null;
}

/** What an acceptance keeps of the sides of a finding. */
export function digestsOf({ sides }: Finding): string[] {
  return sides.map(({ digest }) => digest);
}

/** Checks that weigh less here: those that the settings dismiss, and those refused twice as finding no fault. */
export function loweredChecks({ accepted, dismissedRules }: Settings): ReadonlySet<string> {
  const refused = new Map<string, number>();
  for (const { finding, reason } of accepted) {
    if (reason !== ('no-fault' satisfies StockReason)) continue;
    const check = finding.split(':')[0] ?? '';
    refused.set(check, (refused.get(check) ?? 0) + 1);
  }
  const twice = [...refused].filter(([, times]) => times >= refusalsToLower).map(([check]) => check);
  return new Set([...dismissedRules, ...twice]);
}

function namedFor(finding: Finding, { accepted }: Settings): Acceptance[] {
  return accepted.filter((acceptance) => acceptance.finding === finding.id);
}

function joined(digests: readonly string[]): string {
  return [...digests].sort().join();
}
