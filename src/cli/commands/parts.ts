import { stat } from 'node:fs/promises';
import path from 'node:path';
import { partsDocument } from '#app/documents/partsDocument.ts';
import { listParts, listPartsOfFile } from '#app/listParts.ts';
import { onePlace, readArguments } from '../arguments.ts';
import { printParts } from '../print/printParts.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { type Command, jsonOption } from './command.ts';

export const partsCommand: Command = {
  name: 'parts',
  usage: 'DIR|FILE [--json]',
  title: 'show the bill of materials as it is understood',
  about:
    'Reads the parts lists of a folder, or one file, and shows what was taken for what: columns, values, ratings, counts.',
  options: [jsonOption],
  examples: ['parts demo/tide-lamp', 'parts ~/heap/order.csv --json'],
  async run(words) {
    const { values, positionals } = readArguments(words, { json: { type: 'boolean' } });
    const place = onePlace(positionals, 'a folder or a file');
    const listing = await withWorld(async (world) => {
      if (!(await isFile(place))) return listParts(await world.openFolder(place), world);
      return listPartsOfFile(await world.openFolder(path.dirname(place)), path.basename(place));
    });
    if (values.json) printJson(partsDocument(listing));
    else process.stdout.write(printParts(listing));
    return 0;
  },
};

async function isFile(place: string): Promise<boolean> {
  try {
    return (await stat(place)).isFile();
  } catch {
    return false;
  }
}
