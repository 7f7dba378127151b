import type { Judged } from '#core/assembled.ts';
import type { Audience, Finding, Verdict } from '#core/finding.ts';
import { declaresEnough } from '#rehearsal/coverage.ts';

/** Whether a builder can follow the guide. Silence never passes: a guide that declares little is not buildable. */
export function verdictOf(findings: readonly Finding[], judged: Judged, audience: Audience): Verdict {
  const counts = ({ audience: whom }: Finding) => whom === 'builder' || audience === 'publisher';
  if (findings.some((finding) => finding.weight === 'halts' && counts(finding))) return 'halts';
  return tellsEnough(judged) ? 'buildable' : 'not-enough-told';
}

function tellsEnough({ build, ledger }: Judged): boolean {
  const { parts, connections } = ledger.coverage;
  if (ledger.steps.length === 0 || build.parts.length === 0) return false;
  if (parts === null || parts < declaresEnough) return false;
  return build.connections.length === 0 || (connections !== null && connections >= declaresEnough);
}
