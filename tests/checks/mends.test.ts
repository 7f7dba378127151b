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
    expect(offered).toEqual([
      'definition-unused: of a label that is only spoken of without brackets',
      'hazard-not-named: a lithium cell that nobody warns of',
      'hazard-not-named: soldering without a word of heat and smoke is one finding for each, however many steps solder',
      'picture-missing: capitals that only some disks forgive',
      'value-differs: list and wiring agree, the text has been left behind',
    ]);
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
