import type { Judgement } from '#app/check.ts';
import type { Confirming, TextEdit } from '#app/confirm.ts';
import { offered, sureEnough } from '#app/confirm.ts';
import type { Build } from '#core/build.ts';
import type { Proposal } from '#core/proposal.ts';
import { changedLines } from './changedLines.ts';
import { count, safe, wrapped } from './layout.ts';
import { coverageInWords } from './printJudgement.ts';

/** What each step seems to take, numbered through, and what to do about it. */
export function printProposals(judgement: Judgement): string {
  const { build, ledger } = judgement.judged;
  const all = offered(judgement);
  if (all.length === 0) return 'There is nothing to confirm: the steps speak of nothing that they do not declare.\n';
  const lines = [
    wrapped(
      `The steps declare ${coverageInWords(ledger.coverage)}. With all that follows confirmed: ${coverageInWords(judgement.coverageIfConfirmed)}.`,
      '',
    ),
  ];
  let step = '';
  for (const [index, proposal] of all.entries()) {
    if (proposal.step !== step) lines.push('', headingOf(proposal.step, build));
    step = proposal.step;
    lines.push(printProposal(proposal, index + 1));
  }
  const sure = all.filter(({ confidence }) => confidence >= sureEnough).length;
  lines.push(
    '',
    wrapped(
      `Nothing was written. --show --all gives the lines as they would stand in the guide; --all writes the ${sure} of at least ${percent(sureEnough)}; --only 1 4-6 “A step's heading” writes some; --not 2 remembers what you do not want.`,
      '',
    ),
  );
  return `${lines.join('\n')}\n`;
}

/** One proposal, with how sure it is and why. */
export function printProposal({ label, item, confidence, why }: Proposal, number: number): string {
  const head = `${String(number).padStart(4)}. ${label}: ${safe(item)}`;
  return `${head}   (${percent(confidence)})\n${wrapped(safe(why), '      ')}`;
}

/** The lines that would be added to the guide. */
export function printPlan(edits: readonly TextEdit[]): string {
  const lines = edits.flatMap(({ source, edit }) => [
    safe(source.file),
    ...changedLines(source.text, edit.changes).flatMap(({ line, before, after }) => [
      `   line ${line}`,
      ...before.map((text) => `   - ${safe(text)}`),
      ...after.map((text) => `   + ${safe(text)}`),
    ]),
  ]);
  return lines.length === 0 ? '' : `${lines.join('\n')}\n`;
}

/** What was written, what was not and why, and how much the steps declare now. */
export function printConfirming({ confirmed, refused, declined, written, judgement }: Confirming): string {
  const lines = [
    confirmed.length === 0 ? 'Nothing was confirmed.' : `Confirmed ${count(confirmed.length, 'fact')}.`,
    ...refused.map(({ item, step }) =>
      wrapped(`Not written: “${safe(item)}” in the step ${safe(step)}, since it would not be read back as that.`, ''),
    ),
    declined.length === 0
      ? ''
      : `${count(declined.length, 'proposal')} will not be made again (declined in twicebuilt.yaml).`,
    written.length === 0 ? '' : `Wrote ${written.map(safe).join(', ')}.`,
    `The steps now declare ${coverageInWords(judgement.judged.ledger.coverage)}.`,
  ];
  return `${lines.filter((line) => line !== '').join('\n')}\n`;
}

export function headingOf(step: string, { instructions }: Build): string {
  return safe(instructions.sections.find(({ id }) => id === step)?.heading ?? step);
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
