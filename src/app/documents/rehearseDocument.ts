import { findingsOfStep, rehearsalChecks } from '#checks/judge.ts';
import type { Judgement } from '../check.ts';
import { findingDocument } from './findingDocument.ts';
import { placeDocument } from './placeDocument.ts';
import { proposalDocument } from './proposalDocument.ts';

/** JSON output of `rehearse`. */
export function rehearseDocument({
  verdict,
  findings,
  judged,
  confirm,
  coverageIfConfirmed,
}: Judgement): Record<string, unknown> {
  const { build, ledger } = judged;
  const ofRehearsal = findings.filter((finding) => rehearsalChecks.has(finding.check));
  return {
    format: 1,
    verdict,
    coverage: { ...ledger.coverage, proposed: coverageIfConfirmed },
    confirm: confirm.map(proposalDocument),
    variants: ledger.variants,
    steps: ledger.steps.map(({ step, before, after }) => {
      const section = build.instructions.sections.find(({ id }) => id === step);
      return {
        id: step,
        title: section?.heading ?? step,
        place: section === undefined ? null : placeDocument(section.place),
        before,
        after,
        findings: findingsOfStep(ofRehearsal, step).map(findingDocument),
      };
    }),
    findings: ofRehearsal.map(findingDocument),
  };
}
