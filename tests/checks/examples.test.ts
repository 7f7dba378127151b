import { describe, expect, it } from 'vitest';
import type { Expected } from '#checks/defineCheck.ts';
import { judge } from '#checks/judge.ts';
import { checks } from '#checks/registry.ts';
import type { Finding } from '#core/finding.ts';
import { judgedFrom } from './judgedFrom.ts';

describe.each(checks.map((check) => [check.id, check] as const))('%s', (_, check) => {
  it('shows by two examples each what it passes and what it does not', () => {
    expect(check.examples.passes.length).toBeGreaterThanOrEqual(2);
    expect(check.examples.fails.length).toBeGreaterThanOrEqual(2);
  });
  it.each(check.examples.passes)('finds nothing in: $title', async ({ files, outcome = 'ran' }) => {
    const { findings, ran } = judge(await judgedFrom(files), { checks: [check] });
    expect(findings.map(spoken)).toEqual([]);
    expect(ran[0]).toMatchObject({ outcome });
  });
  it.each(check.examples.fails)('finds: $title', async ({ files, expect: expected }) => {
    const { findings } = judge(await judgedFrom(files), { checks: [check] });
    const all = findings.map(spoken);
    for (const one of expected)
      expect(
        findings.some((finding) => isAt(finding, one)),
        `${JSON.stringify(one)} in ${JSON.stringify(all)}`,
      ).toBe(true);
    for (const finding of findings)
      expect(
        expected.some((one) => isAt(finding, one)),
        `unforeseen: ${spoken(finding)}`,
      ).toBe(true);
  });
});

function isAt(finding: Finding, { file, line, column, words }: Expected): boolean {
  if (words !== undefined && !finding.message.includes(words)) return false;
  return finding.sides.some(
    ({ place }) =>
      place.file === file &&
      (line === undefined || (place.kind === 'text' && place.line === line)) &&
      (column === undefined || (place.kind === 'text' && place.column === column)),
  );
}

function spoken({ message, weight, sides }: Finding): string {
  const places = sides.map(({ place }) => (place.kind === 'text' ? `${place.file}:${place.line}` : place.file));
  return `[${weight}] ${message} (${places.join(', ')})`;
}
