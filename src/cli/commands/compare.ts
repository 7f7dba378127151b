import path from 'node:path';
import { compare } from '#app/compare.ts';
import { compareDocument } from '#app/documents/compareDocument.ts';
import { readArguments, UsageMistake } from '../arguments.ts';
import { commonFolder } from '../commonFolder.ts';
import { printComparison } from '../print/printComparison.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { type Command, jsonOption } from './command.ts';

export const compareCommand: Command = {
  name: 'compare',
  usage: 'EARLIER LATER [--json]',
  title: 'find what changed between two pictures of one thing',
  about: `Lays the later picture over the earlier one, whatever the light and the place of the camera, and says where they differ.
The marks that it offers for shots.yaml are on the later one. Writes nothing.`,
  options: [jsonOption],
  examples: ['compare photos/20261003_192202.jpg photos/20261003_194322.jpg'],
  async run(words) {
    const { values, positionals } = readArguments(words, { json: { type: 'boolean' } });
    const [earlier, later, ...more] = positionals;
    if (earlier === undefined || later === undefined || more.length > 0) {
      throw new UsageMistake(`Expected two pictures, the earlier one first; found ${positionals.length}.`);
    }
    const base = commonFolder(positionals);
    const inside = (file: string) => path.relative(base, path.resolve(file)).split(path.sep).join('/');
    const comparison = await withWorld(async (world) =>
      compare(await world.openFolder(base), inside(earlier), inside(later), world),
    );
    if (values.json) printJson(compareDocument(comparison));
    else process.stdout.write(printComparison(comparison));
    return 0;
  },
};
