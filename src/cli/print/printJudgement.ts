import type { Judgement } from '#app/check.ts';
import type { Finding, Verdict } from '#core/finding.ts';
import type { Coverage, Ledger } from '#core/ledger.ts';
import { count, inColumns, safe, wrapped } from './layout.ts';
import { printFinding } from './printFinding.ts';

const worst = 5;

/** The verdict, the worst findings, and on request everything. */
export function printJudgement(judgement: Judgement, options: { readonly all: boolean }): string {
  const { findings, ran } = judgement;
  const shown = options.all ? findings : findings.slice(0, worst);
  const parts = [
    printHead(judgement),
    ...shown.map((finding, at) => printFinding(finding, at + 1, judgement.judged.build)),
    findings.length > shown.length
      ? `${count(findings.length - shown.length, 'more finding')}; add --all to see every one.\n`
      : '',
    options.all
      ? `What each check did\n${inColumns(ran.map((run) => [run.check, run.outcome.replaceAll('-', ' '), run.why]))}\n`
      : '',
  ];
  return parts.filter((part) => part !== '').join('\n');
}

/** Name of the build, verdict and counts. */
export function printHead({ judged, findings, verdict, ran }: Judgement): string {
  const { build, ledger } = judged;
  const failed = ran.filter(({ outcome }) => outcome === 'failed');
  const lines = [
    safe(build.settings.title ?? build.instructions.title ?? build.name),
    wrapped(`${verdictInWords(verdict, ledger)} ${countsInWords(findings)}`, ''),
  ];
  if (failed.length > 0)
    lines.push(wrapped(`Could not run: ${failed.map(({ check, why }) => `${check} (${why})`).join('; ')}.`, ''));
  return `${lines.join('\n')}\n`;
}

function verdictInWords(verdict: Verdict, { coverage, steps }: Ledger): string {
  switch (verdict) {
    case 'buildable':
      return `Buildable as told: the rehearsal went through. It stands on ${coverageInWords(coverage)}.`;
    case 'halts':
      return 'A builder would halt.';
    case 'not-enough-told':
      if (steps.length === 0) return 'Not enough told: there is no guide with steps in this folder.';
      return `Not enough told: the steps name too little to rehearse them (${coverageInWords(coverage)}). Begin each step with a list such as “- Parts: R1, H1”; docs/folder.md shows what it may say.`;
  }
}

/** How much of the build the steps declare, in words. */
export function coverageInWords(coverage: Coverage): string {
  const share = (value: number | null) => (value === null ? 'none listed' : `${Math.round(value * 100)} %`);
  return `parts ${share(coverage.parts)}, connections ${share(coverage.connections)}, tools ${share(coverage.tools)}`;
}

function countsInWords(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'Nothing was found.';
  const of = (weight: Finding['weight']) => findings.filter((finding) => finding.weight === weight).length;
  return `Halts ${of('halts')}, slows ${of('slows')}, tidy ${of('tidy')}.`;
}
