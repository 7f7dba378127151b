import { check } from '#app/check.ts';
import { checkDocument } from '#app/documents/checkDocument.ts';
import { onePlace, readArguments } from '../arguments.ts';
import { printJudgement } from '../print/printJudgement.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { audienceOf, statusOf } from './audience.ts';
import { type Command, jsonOption } from './command.ts';

export const checkCommand: Command = {
  name: 'check',
  usage: 'DIR [--all] [--for builder|publisher] [--json]',
  title: 'hold parts, wiring, code, pictures and text against each other',
  about: `Reads the folder, adopted or not, rehearses the guide and runs every check. Shows what halts a builder first,
each finding with the places that disagree, what happens to somebody who follows it, and what to do.
Your files stay as they are; in an adopted folder new facts are noted in history.jsonl.`,
  options: [
    { flag: '--all', meaning: 'every finding, not only the five worst, and what each check did' },
    { flag: '--for WHO', meaning: 'builder (unless said otherwise) or publisher: whose findings decide the verdict' },
    jsonOption,
  ],
  examples: ['check demo/tide-lamp', 'check . --all', 'check . --for publisher --json'],
  async run(words) {
    const { values, positionals } = readArguments(words, {
      all: { type: 'boolean' },
      for: { type: 'string' },
      json: { type: 'boolean' },
    });
    const place = onePlace(positionals, 'a folder');
    const audience = audienceOf(values.for);
    const judgement = await withWorld(async (world) => check(await world.openFolder(place), world, { for: audience }));
    if (values.json) printJson(checkDocument(judgement));
    else process.stdout.write(printJudgement(judgement, { all: values.all ?? false }));
    return statusOf(judgement.verdict);
  },
};
