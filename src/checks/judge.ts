import type { Judged } from '#core/assembled.ts';
import type { Audience, CheckRun, Finding, Verdict } from '#core/finding.ts';
import type { StepId } from '#core/step.ts';
import { otherLanguage } from '#prose/language/languageOf.ts';
import { acceptanceOf, lapsedAcceptanceOf, loweredChecks } from './acceptance.ts';
import type { Check, FindingDraft } from './defineCheck.ts';
import { lackingFacts } from './factNames.ts';
import { findingsFrom } from './finding.ts';
import { checks } from './registry.ts';
import { verdictOf } from './verdict.ts';
import { worstFirst } from './worstFirst.ts';

export interface Judgement {
  /** Gravest first, within a weight in reading order. Accepted ones are left out. */
  readonly findings: Finding[];
  /** Findings that the maker lives with, and why. */
  readonly accepted: { readonly finding: Finding; readonly reason: string }[];
  /** Checks that weigh less because the maker has dismissed them. */
  readonly lowered: string[];
  readonly ran: CheckRun[];
  readonly verdict: Verdict;
}

export interface JudgeOptions {
  /** With `publisher`, what concerns the publisher counts for the verdict too. */
  readonly for?: Audience;
  /** Other checks than all of them. */
  readonly checks?: readonly Check[];
}

/** Runs every check on a build. One that breaks is reported as failed, and the rest go on. */
export function judge(judged: Judged, options: JudgeOptions = {}): Judgement {
  const findings: Finding[] = [];
  const ran: CheckRun[] = [];
  for (const check of options.checks ?? checks) {
    const outcome = runCheck(check, judged);
    findings.push(...outcome.findings);
    ran.push(outcome.run);
  }
  const { settings } = judged.build;
  const accepted = findings.flatMap((finding) => {
    const acceptance = acceptanceOf(finding, settings);
    return acceptance === null ? [] : [{ finding, reason: acceptance.reason }];
  });
  const isAccepted = new Set(accepted.map(({ finding }) => finding));
  const open = findings
    .filter((finding) => !isAccepted.has(finding))
    .map((finding) => ({ ...finding, lapsed: lapsedAcceptanceOf(finding, settings)?.reason ?? null }));
  const all = options.checks ?? checks;
  const audience = options.for ?? 'builder';
  const grave = new Set(all.filter((check) => check.grave === true).map(({ id }) => id));
  const lowered = loweredChecks(settings);
  return {
    findings: worstFirst(open, judged.build, { audience, grave }),
    accepted,
    lowered: all.filter(({ id, firm }) => lowered.has(id) && firm !== true).map(({ id }) => id),
    ran,
    verdict: verdictOf(open, judged, audience),
  };
}

/** Checks of which findings come from the simulated builder. */
export const rehearsalChecks: ReadonlySet<string> = new Set(
  checks.filter(({ rehearsal }) => rehearsal === true).map(({ id }) => id),
);

/** The findings that have to do with one step. */
export function findingsOfStep(findings: readonly Finding[], step: StepId): Finding[] {
  return findings.filter(({ subjects }) => subjects.includes(`step:${step}`));
}

function runCheck(check: Check, judged: Judged): { findings: Finding[]; run: CheckRun } {
  const without = (outcome: CheckRun['outcome'], why: string) => ({
    findings: [],
    run: { check: check.id, outcome, why },
  });
  const absent = lackingFacts(check.needs.subject, judged);
  if (absent.length > 0) return without('does-not-apply', absent.join('; '));
  const other = check.words === undefined ? null : otherLanguage(judged.facts.language);
  if (other !== null) return without('cannot-tell', `the guide is in ${other}; this check reads English words`);
  const lacking = lackingFacts(check.needs.witnesses, judged);
  if (lacking.length > 0) return without('cannot-tell', lacking.join('; '));
  const drafts: FindingDraft[] = [];
  const open: string[] = [];
  try {
    for (const found of check.run(judged)) {
      if ('cannotTell' in found) open.push(found.cannotTell);
      else drafts.push(found);
    }
  } catch (error) {
    return without('failed', error instanceof Error ? error.message : String(error));
  }
  const findings = findingsFrom(check, drafts, judged);
  const why = [...new Set(open)].join('; ');
  return { findings, run: { check: check.id, outcome: why === '' ? 'ran' : 'cannot-tell', why } };
}
