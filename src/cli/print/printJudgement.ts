import type { Judgement } from '#app/check.ts';
import { openItems } from '#app/impact.ts';
import { noteOnHazards } from '#app/listCautions.ts';
import { mendable } from '#app/mend.ts';
import { reasonInWords } from '#checks/acceptance.ts';
import { type FindingGroup, groupFindings } from '#checks/groupFindings.ts';
import type { Judged } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { Finding, Verdict } from '#core/finding.ts';
import type { Coverage } from '#core/ledger.ts';
import { count, inColumns, safe, wrapped } from './layout.ts';
import { printGroup } from './printFinding.ts';

const worst = 5;

/** The verdict, the worst findings, and on request everything. */
export function printJudgement(judgement: Judgement, options: { readonly all: boolean }): string {
  const { findings, ran, judged } = judgement;
  const groups = groupFindings(findings);
  const shown = options.all ? groups : groups.slice(0, worst);
  const told = shown.reduce((sum, group) => sum + group.findings.length, 0);
  const parts = [
    printHead(judgement),
    ...shown.map((group, at) => printGroup(group, at + 1, judged.build, options.all ? Number.POSITIVE_INFINITY : 3)),
    findings.length > told ? `${count(findings.length - told, 'more finding')}; add --all to see every one.\n` : '',
    printWays(judgement, shown),
    options.all ? printQuiet(judgement) : '',
    options.all ? printNote(judgement) : '',
    options.all
      ? `What each check did\n${inColumns(ran.map((run) => [run.check, run.outcome.replaceAll('-', ' '), run.why]))}\n`
      : '',
  ];
  return parts.filter((part) => part !== '').join('\n');
}

/** What can be done about the findings besides correcting the files by hand. */
function printWays(judgement: Judgement, shown: readonly FindingGroup[]): string {
  const { findings } = judgement;
  if (findings.length === 0) return '';
  const lines: string[] = [];
  const told = new Set(shown.flatMap((group) => group.findings));
  const untold = findings.filter((finding) => haltsPublishing(finding) && !told.has(finding)).length;
  if (untold > 0)
    lines.push(
      `To see ${untold === 1 ? 'the one that halts' : `the ${untold} that halt`} publishing: twicebuilt check DIR --for publisher`,
    );
  const changes = mendable(judgement).length;
  if (changes > 0)
    lines.push(`To look through ${count(changes, 'change')} that would mend some: twicebuilt check DIR --mend`);
  lines.push('To live with one: twicebuilt accept DIR NUMBER --because REASON');
  return `${lines.join('\n')}\n`;
}

/** That no listed hazard was found, which calls nothing safe. */
function printNote({ judged }: Judgement): string {
  const note = noteOnHazards(judged.facts);
  return note === null ? '' : `${wrapped(note, '')}\n`;
}

/** What the maker lives with. */
function printQuiet({ accepted }: Judgement): string {
  if (accepted.length === 0) return '';
  const rows = accepted.map(({ finding, reason }) => [safe(finding.id), safe(reasonInWords(reason))]);
  return `Accepted\n${inColumns(rows)}\n`;
}

/** Name of the build, verdict and counts; `ifNone` where nothing was found. */
export function printHead(judgement: Judgement, ifNone = 'Nothing was found.'): string {
  const { judged, findings, accepted, lowered, impact, verdict, ran } = judgement;
  const { build } = judged;
  const failed = ran.filter(({ outcome }) => outcome === 'failed');
  const lines = [
    safe(build.settings.title ?? build.instructions.title ?? build.name),
    wrapped(
      `${verdictInWords(verdict, judged, findings)} ${findings.length === 0 ? ifNone : countsInWords(findings)}`,
      '',
    ),
  ];
  lines.push(...printConfirmations(judgement));
  if (failed.length > 0)
    lines.push(wrapped(`Could not run: ${failed.map(({ check, why }) => `${check} (${why})`).join('; ')}.`, ''));
  if (accepted.length > 0) lines.push(`Accepted, and quiet: ${count(accepted.length, 'finding')}.`);
  if (lowered.length > 0) {
    lines.push(wrapped(`Weighs less here, since you have refused it: ${lowered.join(', ')}.`, ''));
  }
  const open = openItems(impact).length;
  if (open > 0) lines.push(`Older than a change: ${count(open, 'place')}; see twicebuilt impact DIR.`);
  return `${lines.join('\n')}\n`;
}

/** What the maker could confirm to tell enough, where that is what lacks. */
function printConfirmations({ confirm, coverageIfConfirmed, judged }: Judgement): string[] {
  if (confirm.length === 0) return [];
  const { sections } = judged.build.instructions;
  const heading = (step: string) => sections.find(({ id }) => id === step)?.heading ?? step;
  return [
    wrapped(
      `The text speaks of more: with every proposal confirmed the steps would declare ${coverageInWords(coverageIfConfirmed)}. To look through them: twicebuilt confirm DIR. These help most:`,
      '',
    ),
    ...confirm.map(({ step, label, item }) => wrapped(`“${safe(heading(step))}”: ${label} ${safe(item)}`, '   ')),
  ];
}

function verdictInWords(
  verdict: Verdict,
  { build, ledger: { coverage, steps } }: Judged,
  findings: readonly Finding[],
): string {
  switch (verdict) {
    case 'buildable':
      return `Buildable as told: the rehearsal went through. The steps declare ${coverageInWords(coverage)}.`;
    case 'halts':
      return findings.some((finding) => finding.weight === 'halts' && !haltsPublishing(finding))
        ? 'A builder would halt.'
        : 'It should not be published like this.';
    case 'not-enough-told':
      if (steps.length === 0) return `Not enough told: ${whyNoSteps(build)}`;
      return `Not enough told: the steps name too little to rehearse them (${coverageInWords(coverage)}). Begin each step with a list such as “- Parts: R1, H1”; docs/folder.md shows what it may say.`;
  }
}

/** How much of the build the steps declare, in words. */
export function coverageInWords(coverage: Coverage): string {
  const share = (value: number | null) => (value === null ? 'none listed' : `${Math.round(value * 100)} %`);
  return `parts ${share(coverage.parts)}, connections ${share(coverage.connections)}, tools ${share(coverage.tools)}`;
}

function countsInWords(findings: readonly Finding[]): string {
  const of = (weight: Finding['weight']) => findings.filter((finding) => finding.weight === weight).length;
  const publishing = findings.filter(haltsPublishing).length;
  const counts = `Halts ${of('halts') - publishing}, slows ${of('slows')}, tidy ${of('tidy')}`;
  return publishing === 0 ? `${counts}.` : `${counts}; halts publishing ${publishing}.`;
}

function haltsPublishing({ audience, weight }: Finding): boolean {
  return audience === 'publisher' && weight === 'halts';
}

function whyNoSteps({ roles, instructions: { sections } }: Build): string {
  const file = sections[0]?.file ?? roles.find(({ role }) => role === 'guide')?.places[0];
  return file === undefined
    ? 'there is no guide in this folder. Write one as guide.md, with a heading for each step, or name its file under roles in twicebuilt.yaml.'
    : `${safe(file)} has no steps. Give each a heading of its own, such as “## Fit the sockets”.`;
}
