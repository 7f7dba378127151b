import { type Judgement as CheckJudgement, judge } from '#checks/judge.ts';
import type { Judged } from '#core/assembled.ts';
import type { Audience } from '#core/finding.ts';
import type { Coverage } from '#core/ledger.ts';
import type { Proposal } from '#core/proposal.ts';
import { type Impact, impactOf } from '#editions/impactOf.ts';
import { readFacts } from '#prose/readFacts.ts';
import { coverageIfConfirmed, mostHelpful } from '#rehearsal/confirmations.ts';
import { rehearse } from '#rehearsal/rehearse.ts';
import { type OpenBuild, openBuild } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';
import { recordHistory } from './recordHistory.ts';

/** A build held against itself. */
export interface Judgement extends CheckJudgement {
  readonly judged: Judged;
  /** How much of the build the steps would declare if every proposal were confirmed. It changes no verdict. */
  readonly coverageIfConfirmed: Coverage;
  /** The confirmations that would help most; none where enough is told. */
  readonly confirm: readonly Proposal[];
  /** What is left to look at after changes; empty in a folder that was not adopted. */
  readonly impact: readonly Impact[];
}

/** More would be a list to work through, not a hint. */
const mostConfirmations = 5;

/** Reads, rehearses and checks a folder. Writes nothing but, in an adopted one, what is new to `history.jsonl`. */
export async function check(
  folder: FolderPort,
  world: World,
  options: { readonly for?: Audience } = {},
): Promise<Judgement> {
  const open = await openBuild(folder, world);
  try {
    return await judgeOpen(open, world, options);
  } finally {
    await open.pictures.close();
  }
}

/** The same for a folder that is open already. */
export async function judgeOpen(
  open: OpenBuild,
  world: World,
  options: { readonly for?: Audience } = {},
): Promise<Judgement> {
  world.progress.report('Rehearsing and checking', 0, null);
  const { build, folder } = open;
  const { history } = build.adopted ? await recordHistory(build, folder, world) : { history: [] };
  const facts = readFacts(build);
  const judged: Judged = { build, facts, ledger: rehearse(build, facts), asOf: world.now().slice(0, 10) };
  const judgement = judge(judged, options);
  const impact = impactOf(judged, history, judgement.findings, build.settings.impactDone);
  const { ledger } = judged;
  const confirm =
    judgement.verdict === 'not-enough-told' ? mostHelpful(build, facts, ledger.coverage, mostConfirmations) : [];
  return { judged, impact, confirm, coverageIfConfirmed: coverageIfConfirmed(build, facts), ...judgement };
}
