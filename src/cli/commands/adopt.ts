import { adopt } from '#app/adopt.ts';
import { adoptDocument } from '#app/documents/adoptDocument.ts';
import { onePlace, readArguments } from '../arguments.ts';
import { printAdoption } from '../print/printAdoption.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { type Command, jsonOption } from './command.ts';

export const adoptCommand: Command = {
  name: 'adopt',
  usage: 'DIR [--json]',
  title: 'make a folder a build folder: find which file plays which role',
  about: `Looks through the folder and says which files are the guide, the parts list, the wiring, the code, the
pictures and so on, what is missing, and what would leak if the folder were shared. Nothing is moved or
changed; it writes twicebuilt.yaml and history.jsonl and nothing else. In a folder adopted before it
overwrites nothing.`,
  options: [jsonOption],
  examples: ['adopt ~/builds/tide-lamp'],
  async run(words) {
    const { values, positionals } = readArguments(words, { json: { type: 'boolean' } });
    const place = onePlace(positionals, 'a folder');
    const adoption = await withWorld(async (world) => adopt(await world.openFolder(place), world));
    if (values.json) printJson(adoptDocument(adoption));
    else process.stdout.write(printAdoption(adoption, place));
    return 0;
  },
};
