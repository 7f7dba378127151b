import type { Judgement } from '#app/check.ts';
import { findingsOfStep, rehearsalChecks } from '#checks/judge.ts';
import type { Build } from '#core/build.ts';
import type { State } from '#core/ledger.ts';
import { formatMinutes } from '#guide/formatMinutes.ts';
import { unitOfPart } from '#rehearsal/amounts.ts';
import { type Change, changeOf } from '#rehearsal/changeOf.ts';
import { count, safe, wrapped } from './layout.ts';
import { printFinding } from './printFinding.ts';
import { printHead } from './printJudgement.ts';

/** The guide as the simulated builder walked through it. */
export function printRehearsal(judgement: Judgement): string {
  const { judged, findings } = judgement;
  const ofRehearsal = findings.filter((finding) => rehearsalChecks.has(finding.check));
  const lines = [printHead({ ...judgement, findings: ofRehearsal }, 'On this walk nothing stopped that builder.')];
  const { variants } = judged.ledger;
  if (variants.length > 0)
    lines.push(wrapped(`Walked through once for each variant: ${variants.map(safe).join(', ')}.`, ''), '');
  let number = 0;
  const told = new Set<string>();
  for (const [at, { step, before, after }] of judged.ledger.steps.entries()) {
    const heading = judged.build.instructions.sections.find(({ id }) => id === step)?.heading ?? step;
    lines.push(`Step ${at + 1}: ${safe(heading)}`);
    lines.push(wrapped(whatHappens(before, after, judged.build), '   '));
    for (const finding of findingsOfStep(ofRehearsal, step).filter(({ id }) => !told.has(id))) {
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
  const change = changeOf(before, after);
  const said = [
    change.warned.length > 0 ? `hears ${count(change.warned.length, 'caution')}` : '',
    takenIn(change, build),
    change.made.length > 0 ? `makes ${count(change.made.length, 'connection')}` : '',
    change.gone.length > 0 ? `takes ${count(change.gone.length, 'connection')} away` : '',
    change.loaded.length > 0 ? `loads ${change.loaded.map(safe).join(', ')}` : '',
    change.explained.length > 0 ? `learns ${change.explained.map(safe).join(', ')}` : '',
    before.side === after.side || after.side === null ? '' : `turns to the ${safe(after.side)}`,
    before.powered === after.powered
      ? `power ${after.powered ? 'on' : 'off'}`
      : `switches power ${after.powered ? 'on' : 'off'}`,
    after.clock.untold === 0 && after.clock.hands + after.clock.wait > 0
      ? `after ${formatMinutes(after.clock.hands + after.clock.wait)}`
      : '',
  ];
  return said.filter((part) => part !== '').join('; ');
}

/** The parts that a step takes out of the bag. */
function takenIn({ parts }: Change, build: Build): string {
  const taken = parts.flatMap(({ part, before, after }) => {
    const used = Math.round((before - after) * 1000) / 1000;
    const unit = unitOfPart(build.parts.find(({ id }) => id === part));
    if (used <= 0) return [];
    if (unit !== 'pcs') return [`${used} ${unit} of ${safe(part)}`];
    return [used === 1 ? safe(part) : `${safe(part)} × ${used}`];
  });
  return taken.length === 0 ? '' : `takes ${taken.join(', ')}`;
}
