import type { Judgement } from '#app/check.ts';
import { findingsOfStep, rehearsalChecks } from '#checks/judge.ts';
import type { Build } from '#core/build.ts';
import { firstValue } from '#core/claim.ts';
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
    lines.push(wrapped(whatHappens(before, after, judged.build), '   '));
    for (const finding of findingsOfStep(ofRehearsal, step)) {
      told.add(finding.id);
      lines.push(printFinding(finding, ++number, judged.build));
    }
  }
  const atEnd = ofRehearsal.filter(({ id }) => !told.has(id));
  if (atEnd.length > 0)
    lines.push('At the end', ...atEnd.map((finding) => printFinding(finding, ++number, judged.build)));
  return `${lines.join('\n')}\n`;
}

function whatHappens(before: State, after: State, build: Build): string {
  const made = after.made.length - before.made.length;
  const heard = after.warned.length - before.warned.length;
  const loaded = after.loaded.slice(before.loaded.length);
  const said = [
    heard > 0 ? `hears ${count(heard, 'caution')}` : '',
    takenIn(before, after, build),
    made > 0 ? `makes ${made}` : '',
    loaded.length > 0 ? `loads ${loaded.map(safe).join(', ')}` : '',
    before.powered === after.powered
      ? `power ${after.powered ? 'on' : 'off'}`
      : `switches power ${after.powered ? 'on' : 'off'}`,
  ];
  return said.filter((part) => part !== '').join('; ');
}

/** The parts that a step takes out of the bag. */
function takenIn(before: State, after: State, build: Build): string {
  const taken = Object.entries(before.bag).flatMap(([part, had]) => {
    const used = Math.round((had - (after.bag[part] ?? 0)) * 1000) / 1000;
    const amount = build.parts.find(({ id }) => id === part)?.amount;
    const unit = (amount === undefined ? undefined : firstValue(amount)?.unit) ?? 'pcs';
    if (used <= 0) return [];
    if (unit !== 'pcs') return [`${used} ${unit} of ${safe(part)}`];
    return [used === 1 ? safe(part) : `${safe(part)} × ${used}`];
  });
  return taken.length === 0 ? '' : `takes ${taken.join(', ')}`;
}
