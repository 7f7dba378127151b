import { check, type Judgement } from '#app/check.ts';
import { checkDocument } from '#app/documents/checkDocument.ts';
import { type Mendable, type Mending, mendable, mendFindings } from '#app/mend.ts';
import type { FolderPort } from '#app/ports.ts';
import { onePlace, readArguments, UsageMistake } from '../arguments.ts';
import { canAsk, openQuestions } from '../ask.ts';
import { count } from '../print/layout.ts';
import { printJudgement } from '../print/printJudgement.ts';
import { printMend } from '../print/printMend.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { audienceOf, statusOf } from './audience.ts';
import { type Command, jsonOption } from './command.ts';

export const checkCommand: Command = {
  name: 'check',
  usage: 'DIR [--all] [--for builder|publisher] [--mend [--yes]] [--json]',
  title: 'hold parts, wiring, code, pictures and text against each other',
  about: `Reads the folder, adopted or not, rehearses the guide and runs every check. Shows what halts a builder first,
each finding with the places that disagree, what happens to somebody who follows it, and what to do.
Your files stay as they are, unless you say yes to a change that --mend shows; in an adopted folder new facts are
noted in history.jsonl.`,
  options: [
    { flag: '--all', meaning: 'every finding, not only the five worst, and what each check did' },
    { flag: '--for WHO', meaning: 'builder (unless said otherwise) or publisher: whose findings decide the verdict' },
    { flag: '--mend', meaning: 'show the changes that would take findings away, and make those you say yes to' },
    { flag: '--yes', meaning: 'with --mend: make them all without asking' },
    jsonOption,
  ],
  examples: ['check demo/tide-lamp', 'check . --all', 'check . --mend', 'check . --for publisher --json'],
  async run(words) {
    const { values, positionals } = readArguments(words, {
      all: { type: 'boolean' },
      for: { type: 'string' },
      mend: { type: 'boolean' },
      yes: { type: 'boolean' },
      json: { type: 'boolean' },
    });
    const place = onePlace(positionals, 'a folder');
    if (values.yes && !values.mend) throw new UsageMistake('--yes goes with --mend.');
    const audience = audienceOf(values.for);
    const look = async () =>
      withWorld(async (world) => {
        const folder = await world.openFolder(place);
        return { folder, judgement: await check(folder, world, { for: audience }) };
      });
    const { folder, judgement } = await look();
    if (!values.mend) return show(judgement, values);
    const mending = await mendFindings(folder, await choose(judgement, values));
    const after = mending.mended.length > 0 ? (await look()).judgement : judgement;
    if (values.json) printJson({ ...checkDocument(after), mended: mending.mended.map(({ id }) => id) });
    else process.stdout.write(mendedInWords(mending, folder));
    return statusOf(after.verdict);
  },
};

interface Wishes {
  readonly all?: boolean | undefined;
  readonly yes?: boolean | undefined;
  readonly json?: boolean | undefined;
}

function show(judgement: Judgement, { all, json }: Wishes): 0 | 1 {
  if (json) printJson(checkDocument(judgement));
  else process.stdout.write(printJudgement(judgement, { all: all ?? false }));
  return statusOf(judgement.verdict);
}

/** Shows each change, and asks about it where there is somebody to ask. */
async function choose(judgement: Judgement, { yes, json }: Wishes): Promise<Mendable[]> {
  const offered = mendable(judgement);
  if (json) return yes ? offered : [];
  if (offered.length === 0)
    process.stdout.write('There is nothing that a change of one file would settle for certain.\n');
  if (yes || !canAsk()) {
    process.stdout.write(offered.map((one, at) => printMend(one, at + 1)).join('\n'));
    if (!yes && offered.length > 0) process.stdout.write('\nNothing was changed. Add --yes to make these changes.\n');
    return yes ? offered : [];
  }
  const questions = openQuestions();
  try {
    const chosen: Mendable[] = [];
    for (const [at, one] of offered.entries()) {
      const answer = await questions.ask(
        `${printMend(one, at + 1)}   Change it? y yes, n no, a all that follow, q stop: `,
        ['y', 'n', 'a', 'q'],
      );
      if (answer === 'q') break;
      if (answer === 'a') return [...chosen, ...offered.slice(at)];
      if (answer === 'y') chosen.push(one);
    }
    return chosen;
  } finally {
    questions.close();
  }
}

function mendedInWords({ mended, refused }: Mending, { root }: FolderPort): string {
  const lines = mended.length === 0 ? [] : [`Made ${count(mended.length, 'change')} in ${root}.`];
  lines.push(...refused.map(({ finding, why }) => `Not changed (${finding.id}): ${why}.`));
  return lines.map((line) => `${line}\n`).join('');
}
