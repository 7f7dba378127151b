import { describe, expect, it } from 'vitest';
import type { ExampleFiles } from '#checks/defineCheck.ts';
import { judge } from '#checks/judge.ts';
import { checks } from '#checks/registry.ts';
import type { Edit } from '#core/edit.ts';
import { judgedFrom } from './judgedFrom.ts';

const examples = checks.flatMap((check) =>
  check.examples.fails.map(({ title, files }) => ({ name: `${check.id}: ${title}`, check, files })),
);

describe('a mend', () => {
  it.each(examples)('takes away its finding and no other, in $name', async ({ check, files }) => {
    const before = judge(await judgedFrom(files), { checks: [check] }).findings;
    for (const { id, mend } of before) {
      if (mend === null) continue;
      const after = judge(await judgedFrom(applied(mend, files)), { checks: [check] }).findings;
      expect(after.map((finding) => finding.id)).toEqual(
        before.map((finding) => finding.id).filter((one) => one !== id),
      );
    }
  });
  it('is offered for a value that two others outvote, a picture in other capitals, a label without use and a caution that lacks, not where either may be right', async () => {
    const offered: string[] = [];
    for (const { name, check, files } of examples) {
      const { findings } = judge(await judgedFrom(files), { checks: [check] });
      if (findings.some(({ mend }) => mend !== null)) offered.push(name);
    }
    expect(new Set(offered.map((name) => name.split(':')[0]))).toEqual(
      new Set([
        'definition-unused',
        'name-nearly-listed',
        'link-tracked',
        'hazard-not-named',
        'picture-missing',
        'value-differs',
        'part-not-taken-up',
        'tool-for-work-missing',
      ]),
    );
  });
});

function applied({ file, changes }: Edit, files: ExampleFiles): ExampleFiles {
  const text = files[file];
  if (typeof text !== 'string') throw new Error(`${file} is no text`);
  let mended = text;
  for (const { span, text: words } of [...changes].reverse())
    mended = mended.slice(0, span[0]) + words + mended.slice(span[1]);
  return { ...files, [file]: mended };
}
