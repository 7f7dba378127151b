import type { Judgement } from '#app/check.ts';
import { findingsOfStep, rehearsalChecks } from '#checks/judge.ts';
import type { State } from '#core/ledger.ts';
import { count, safe, wrapped } from './layout.ts';
import { printFinding } from './printFinding.ts';
import { printHead } from './printJudgement.ts';

/** The guide as the simulated builder walked through it. */
export function printRehearsal(judgement: Judgement): string {
  const { judged, findings } = judgement;
  const ofRehearsal = findings.filter((finding) => rehearsalChecks.has(finding.check));
  const lines = [printHead({ ...judgement, findings: ofRehearsal })];
  let number = 0;
  const told = new Set<string>();
  for (const [at, { step, before, after }] of judged.ledger.steps.entries()) {
    const heading = judged.build.instructions.sections.find(({ id }) => id === step)?.heading ?? step;
    lines.push(`Step ${at + 1}: ${safe(heading)}`);
    lines.push(wrapped(whatHappens(before, after), '   '));
    for (const finding of findingsOfStep(ofRehearsal, step)) {
      told.add(finding.id);
      lines.push(printFinding(finding, ++number));
    }
  }
  const atEnd = ofRehearsal.filter(({ id }) => !told.has(id));
  if (atEnd.length > 0) lines.push('At the end', ...atEnd.map((finding) => printFinding(finding, ++number)));
  return `${lines.join('\n')}\n`;
}

function whatHappens(before: State, after: State): string {
  const left = (state: State) => Object.values(state.bag).reduce((total, n) => total + n, 0);
  const said = [
    `in the bag ${round(left(after))}`,
    `${count(after.made.length - before.made.length, 'thing', 'things')} made`,
    after.loaded.length > before.loaded.length
      ? `loaded ${after.loaded.slice(before.loaded.length).map(safe).join(', ')}`
      : '',
    after.powered ? 'power on' : 'power off',
    after.warned.length > before.warned.length
      ? `heard ${count(after.warned.length - before.warned.length, 'caution')}`
      : '',
  ];
  return said.filter((part) => part !== '').join('; ');
}

function round(n: number): string {
  return String(Math.round(n * 100) / 100);
}
