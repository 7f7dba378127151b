import { check } from '#app/check.ts';
import { rehearseDocument } from '#app/documents/rehearseDocument.ts';
import { onePlace, readArguments } from '../arguments.ts';
import { printRehearsal } from '../print/printRehearsal.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { statusOf } from './audience.ts';
import { type Command, jsonOption } from './command.ts';

export const rehearseCommand: Command = {
  name: 'rehearse',
  usage: 'DIR [--json]',
  title: 'walk through the guide as a simulated first-time builder',
  about: `Executes the guide step by step: parts in hand, tools on the table, connections made, code loaded, power on or
off, cautions heard. Says where that builder halts and why. It stands on what the steps declare; how much of
the build that covers is said first.`,
  options: [jsonOption],
  examples: ['rehearse demo/tide-lamp'],
  async run(words) {
    const { values, positionals } = readArguments(words, { json: { type: 'boolean' } });
    const place = onePlace(positionals, 'a folder');
    const judgement = await withWorld(async (world) => check(await world.openFolder(place), world));
    if (values.json) printJson(rehearseDocument(judgement));
    else process.stdout.write(printRehearsal(judgement));
    return statusOf(judgement.verdict);
  },
};
