import { impactDocument } from '#app/documents/impactDocument.ts';
import { impact } from '#app/impact.ts';
import { onePlace, readArguments, UsageMistake } from '../arguments.ts';
import { printImpact } from '../print/printImpact.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { statusOf } from './audience.ts';
import { type Command, jsonOption } from './command.ts';

export const impactCommand: Command = {
  name: 'impact',
  usage: 'DIR [--looked-at ITEM…] [--all-looked-at] [--json]',
  title: 'after a change, list what else is older than it or now disagrees',
  about: `For each part, wire, step and code file that changed since the tool first saw it: the steps, captions, pictures,
wiring rows and code that depend on it and have not changed since, and what the checks find about it.
An item leaves the list when it is changed too, or when you say that you have looked at it.`,
  options: [
    { flag: '--looked-at ITEM', meaning: 'tick an item off, by number or name; may be given several times' },
    { flag: '--all-looked-at', meaning: 'tick all of them off' },
    jsonOption,
  ],
  examples: ['impact .', 'impact . --looked-at 2 --looked-at 3'],
  async run(words) {
    const { values, positionals } = readArguments(words, {
      'looked-at': { type: 'string', multiple: true },
      'all-looked-at': { type: 'boolean' },
      json: { type: 'boolean' },
    });
    const place = onePlace(positionals, 'a folder');
    const named = values['looked-at'] ?? [];
    if (values['all-looked-at'] && named.length > 0)
      throw new UsageMistake('--looked-at and --all-looked-at exclude each other.');
    const report = await withWorld(async (world) =>
      impact(await world.openFolder(place), world, values['all-looked-at'] ? 'all' : named),
    );
    if (values.json) printJson(impactDocument(report));
    else process.stdout.write(printImpact(report));
    return statusOf(report.judgement.verdict);
  },
};
