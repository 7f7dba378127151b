import { cautionsDocument } from '#app/documents/cautionsDocument.ts';
import { listCautions } from '#app/listCautions.ts';
import { onePlace, readArguments } from '../arguments.ts';
import { printCautions } from '../print/printCautions.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { type Command, jsonOption } from './command.ts';

export const cautionsCommand: Command = {
  name: 'cautions',
  usage: 'DIR [--json]',
  title: 'show the hazards that the build brings with it, and what warns of them',
  about: `Looks through parts, tools, steps and text for the hazards of a library, and for cautions that name them before the
work. Where one lacks, gives words for it: hazard, consequence, how to avoid it, what to wear. Change them as you
like; check tells you where a hazard is left without. Words are read in English; of a guide in another language it says
that it cannot tell. What is found are prompts, never an approval of a design.`,
  options: [jsonOption],
  examples: ['cautions demo/tide-lamp', 'cautions . --json'],
  async run(words) {
    const { values, positionals } = readArguments(words, { json: { type: 'boolean' } });
    const place = onePlace(positionals, 'a folder');
    const listing = await withWorld(async (world) => listCautions(await world.openFolder(place), world));
    if (values.json) printJson(cautionsDocument(listing));
    else process.stdout.write(printCautions(listing));
    return 0;
  },
};
