import type { Guide, StepBlock } from '#guide/guide.ts';

/**
 * Where a reader reports an error, naming the guide, its revision and the step where the address is one for mail.
 * Null where the maker gives no address.
 */
export function reportAddress(guide: Guide, step: StepBlock | null): string | null {
  if (guide.reports === null || !guide.reports.toLowerCase().startsWith('mailto:')) return guide.reports;
  const revision = guide.blocks.find((block) => block.kind === 'revision')?.revision ?? null;
  const subject = [
    guide.title,
    revision === null ? null : `revision ${revision}`,
    step === null ? null : `step ${step.number}: ${step.heading}`,
  ]
    .filter((words) => words !== null)
    .join(', ');
  return `${guide.reports}${guide.reports.includes('?') ? '&' : '?'}subject=${encodeURIComponent(subject)}`;
}
