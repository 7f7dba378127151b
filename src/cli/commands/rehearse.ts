import { check } from '#app/check.ts';
import { rehearseDocument } from '#app/documents/rehearseDocument.ts';
import { writeRehearsalPage } from '#app/writeRehearsalPage.ts';
import { onePlace, readArguments } from '../arguments.ts';
import { printRehearsal } from '../print/printRehearsal.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { statusOf } from './audience.ts';
import { type Command, jsonOption } from './command.ts';

export const rehearseCommand: Command = {
  name: 'rehearse',
  usage: 'DIR [--page FILE] [--json]',
  title: 'walk through the guide as a simulated first-time builder',
  about: `Executes the guide step by step: parts in hand, tools on the table, connections made, code loaded, power on or
off, cautions heard. Says where that builder halts and why. It stands on what the steps declare; how much of
the build that covers is said first.`,
  options: [
    {
      flag: '--page FILE',
      meaning: 'write the whole account as one page (HTML) that stands alone, to read on any screen or print',
    },
    jsonOption,
  ],
  examples: ['rehearse demo/tide-lamp', 'rehearse demo/tide-lamp --page /tmp/rehearsal.html'],
  async run(words) {
    const { values, positionals } = readArguments(words, {
      json: { type: 'boolean' },
      page: { type: 'string' },
    });
    const place = onePlace(positionals, 'a folder');
    const { judgement, page } = await withWorld(async (world) => {
      const folder = await world.openFolder(place);
      const judgement = await check(folder, world);
      const page =
        values.page === undefined ? null : await writeRehearsalPage(judgement, folder.root, values.page, world);
      return { judgement, page };
    });
    if (values.json) printJson(rehearseDocument(judgement));
    else process.stdout.write(printRehearsal(judgement));
    if (page !== null) process.stderr.write(`Wrote ${page}\n`);
    return statusOf(judgement.verdict);
  },
};
