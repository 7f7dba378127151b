import { stat } from 'node:fs/promises';
import path from 'node:path';
import { lookDocument } from '#app/documents/lookDocument.ts';
import { look } from '#app/look.ts';
import { readArguments, UsageMistake } from '../arguments.ts';
import { commonFolder } from '../commonFolder.ts';
import { printLook } from '../print/printLook.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { type Command, jsonOption } from './command.ts';

export const lookCommand: Command = {
  name: 'look',
  usage: 'DIR|FILE… [--json]',
  title: 'measure pictures: focus, light, colour, what is in the way, what they are about',
  about: `Reads each picture once and small and says how sharp, light, neutral and tidy it is, what it is about, and where a whole
board lies in it. Measures are kept by content, so that a second look costs next to nothing. Your pictures are never
opened for writing, and a position is never shown, only that there is one.`,
  options: [jsonOption],
  examples: ['look ~/builds/lamp', 'look photos/IMG_2043.jpg photos/IMG_2044.jpg --json'],
  async run(words) {
    const { values, positionals } = readArguments(words, { json: { type: 'boolean' } });
    const [first] = positionals;
    if (first === undefined) throw new UsageMistake('Expected a folder or pictures; none was given.');
    const looking = await withWorld(async (world) => {
      if (positionals.length === 1 && (await stat(first).catch(() => null))?.isFile() !== true) {
        return look(await world.openFolder(first), null, world);
      }
      const base = commonFolder(positionals);
      const files = positionals.map((file) => path.relative(base, path.resolve(file)).split(path.sep).join('/'));
      return look(await world.openFolder(base), files, world);
    });
    if (values.json) printJson(lookDocument(looking));
    else process.stdout.write(printLook(looking));
    return 0;
  },
};
