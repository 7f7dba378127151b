import { stat } from 'node:fs/promises';
import path from 'node:path';
import { pinsDocument } from '#app/documents/pinsDocument.ts';
import { listPins, listPinsOfFiles } from '#app/listPins.ts';
import { readArguments, UsageMistake } from '../arguments.ts';
import { commonFolder } from '../commonFolder.ts';
import { printPins } from '../print/printPins.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { type Command, jsonOption } from './command.ts';

export const pinsCommand: Command = {
  name: 'pins',
  usage: 'DIR|FILE… [--json]',
  title: 'show what the code says: pins, libraries, numbers, credentials',
  about: `Reads C++ and Python sources through their grammars. The text of a credential is never shown, only where it stands.`,
  options: [jsonOption],
  examples: ['pins demo/tide-lamp', 'pins firmware/main.cpp firmware/pins.h'],
  async run(words) {
    const { values, positionals } = readArguments(words, { json: { type: 'boolean' } });
    const listing = await withWorld(async (world) => {
      const [first] = positionals;
      if (first === undefined) throw new UsageMistake('Expected a folder or source files; none was given.');
      if (positionals.length === 1 && (await stat(first).catch(() => null))?.isFile() !== true) {
        return listPins(await world.openFolder(first), world);
      }
      const base = commonFolder(positionals);
      const files = positionals.map((file) => path.relative(base, path.resolve(file)).split(path.sep).join('/'));
      return listPinsOfFiles(await world.openFolder(base), files, world);
    });
    if (values.json) printJson(pinsDocument(listing));
    else process.stdout.write(printPins(listing));
    return 0;
  },
};
