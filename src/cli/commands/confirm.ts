import { check, type Judgement } from '#app/check.ts';
import { confirmProposals, offered, planConfirming, proposalsNamed, sureEnough } from '#app/confirm.ts';
import { confirmDocument } from '#app/documents/confirmDocument.ts';
import type { Proposal } from '#core/proposal.ts';
import { readArguments, UsageMistake } from '../arguments.ts';
import { canAsk, openQuestions, type Questions } from '../ask.ts';
import { headingOf, printConfirming, printPlan, printProposal, printProposals } from '../print/printProposals.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { statusOf } from './audience.ts';
import { type Command, jsonOption } from './command.ts';

/** What the maker wants of the proposals. */
export interface Wish {
  readonly confirm: readonly Proposal[];
  readonly decline: readonly Proposal[];
}

export const confirmCommand: Command = {
  name: 'confirm',
  usage: '[DIR] [--all] [--only NUMBER|STEP…] [--at-least 0.8] [--not NUMBER…] [--show] [--json]',
  title: 'turn what the steps speak of into facts that can be rehearsed',
  about: `Shows what each step seems to take (parts, tools, wires, code, power, time), with the words that it rests on.
What you confirm is written into the guide, as a list of facts under the step's heading; everything else in the file
stays as it is. At a terminal, without options, it asks one by one.`,
  options: [
    { flag: '--all', meaning: `confirm everything of at least ${sureEnough}` },
    { flag: '--at-least SHARE', meaning: 'confirm everything at least this sure, from 0 to 1' },
    { flag: '--only WHICH…', meaning: 'confirm these: numbers (3, 5-8), names, or steps by their heading' },
    { flag: '--not WHICH…', meaning: 'never propose these again; kept in twicebuilt.yaml' },
    { flag: '--show', meaning: 'with the above: show the lines and write nothing' },
    jsonOption,
  ],
  examples: ['confirm .', 'confirm . --all --not 4', 'confirm . --only 1-3 --only "Fit the lid" --show'],
  async run(words) {
    const { values, positionals } = readArguments(spread(words), {
      all: { type: 'boolean' },
      'at-least': { type: 'string' },
      only: { type: 'string', multiple: true },
      not: { type: 'string', multiple: true },
      show: { type: 'boolean' },
      json: { type: 'boolean' },
    });
    if (positionals.length > 1) throw new UsageMistake(`Expected one folder; found ${positionals.length}.`);
    const wanted: Wanted = {
      atLeast: limitOf(values['at-least'], values.all ?? false),
      only: values.only ?? [],
      not: values.not ?? [],
    };
    const asks = wanted.atLeast === null && wanted.only.length + wanted.not.length === 0;
    if (asks && values.show) throw new UsageMistake('--show goes with --all, --at-least or --only.');
    return withWorld(async (world) => {
      const folder = await world.openFolder(positionals[0] ?? '.');
      const judgement = await check(folder, world);
      const interactive = asks && !values.json && canAsk() && judgement.judged.build.adopted;
      if (interactive && offered(judgement).length > 0) process.stdout.write('\n');
      const wish = interactive ? await askAll(judgement) : wishOf(judgement, wanted);
      if (values.show || (asks && wish.confirm.length + wish.decline.length === 0)) {
        const { edits } = planConfirming(judgement, values.show ? wish.confirm : []);
        const nothing = { confirmed: [], refused: [], declined: [], written: [], edits };
        if (values.json) printJson(confirmDocument(judgement, nothing));
        else
          process.stdout.write(
            values.show ? printPlan(edits) : interactive ? 'Nothing was written.\n' : printProposals(judgement),
          );
        return statusOf(judgement.verdict);
      }
      const done = await confirmProposals(folder, world, judgement, wish);
      if (values.json) printJson(confirmDocument(done.judgement, { ...done, edits: [] }));
      else process.stdout.write(printConfirming(done));
      return statusOf(done.judgement.verdict);
    });
  },
};

interface Wanted {
  /** Null where nothing is to be confirmed by how sure it is. */
  readonly atLeast: number | null;
  readonly only: readonly string[];
  readonly not: readonly string[];
}

function wishOf(judgement: Judgement, { atLeast, only, not }: Wanted): Wish {
  const decline = proposalsNamed(judgement, not);
  const named = only.length === 0 ? null : proposalsNamed(judgement, only);
  const from = named ?? (atLeast === null ? [] : offered(judgement));
  const limit = atLeast ?? 0;
  return { confirm: from.filter((one) => one.confidence >= limit && !decline.includes(one)), decline };
}

/** Goes through all proposals, the maker saying yes or no to each; q ends it and keeps what was said so far. */
export async function sweep(
  proposals: readonly Proposal[],
  questions: Pick<Questions, 'ask'>,
  show: (proposal: Proposal, number: number) => string,
): Promise<Wish> {
  const confirm: Proposal[] = [];
  const decline: Proposal[] = [];
  for (const [index, proposal] of proposals.entries()) {
    const answer = await questions.ask(
      `${show(proposal, index + 1)}\n      y yes, n never, s skip, a all that follow, q stop: `,
      ['y', 'n', 's', 'a', 'q'],
    );
    if (answer === 'q') break;
    if (answer === 'a') return { confirm: [...confirm, ...proposals.slice(index)], decline };
    if (answer === 'y') confirm.push(proposal);
    if (answer === 'n') decline.push(proposal);
  }
  return { confirm, decline };
}

async function askAll(judgement: Judgement): Promise<Wish> {
  const { build } = judgement.judged;
  const questions = openQuestions();
  let step = '';
  try {
    return await sweep(offered(judgement), questions, (proposal, number) => {
      const heading = proposal.step === step ? '' : `${headingOf(proposal.step, build)}\n`;
      step = proposal.step;
      return heading + printProposal(proposal, number);
    });
  } finally {
    questions.close();
  }
}

/** `--only 1 2 3` is written for `--only 1 --only 2 --only 3`: words after it belong to it up to the next option. */
function spread(words: readonly string[]): string[] {
  const result: string[] = [];
  let taking: string | null = null;
  let isFirst = false;
  for (const word of words) {
    if (word.startsWith('--')) {
      const name = /^--(?:only|not)$/.test(word) ? word : null;
      taking = name;
      isFirst = name !== null;
      result.push(word);
    } else if (taking !== null && !isFirst) result.push(taking, word);
    else {
      result.push(word);
      isFirst = false;
    }
  }
  return result;
}

function limitOf(written: string | undefined, all: boolean): number | null {
  if (written === undefined) return all ? sureEnough : null;
  const limit = Number(written.replace(',', '.'));
  if (written.trim() !== '' && limit >= 0 && limit <= 1) return limit;
  throw new UsageMistake(`Expected a share from 0 to 1 after --at-least, such as 0.8; found “${written}”.`);
}
