import { chooseOutput } from '#app/chooseOutput.ts';
import { publishDocument } from '#app/documents/publishDocument.ts';
import { type OutputKind, outputKinds, type Publication, publish } from '#app/publish.ts';
import { unlessUnchanged } from '#app/unlessUnchanged.ts';
import { serveFolder } from '#server/serveFolder.ts';
import { onePlace, readArguments, UsageMistake } from '../arguments.ts';
import { printPublication } from '../print/printPublication.ts';
import { printJson, withWorld } from '../withWorld.ts';
import { audienceOf, statusOf } from './audience.ts';
import { type Command, jsonOption } from './command.ts';

export const publishCommand: Command = {
  name: 'publish',
  usage: 'DIR [--to OUT] [--only site] [--for builder|publisher] [--serve] [--json]',
  title: 'check, rehearse, and write the guide out for readers',
  about: `Checks and rehearses the folder, then writes its guide as a site into out/ of the folder, or into OUT: clean
copies of the pictures (upright, without position, serial numbers, owner or previews) and texts and
code with the credentials withheld that are recognised. A folder that was not adopted is left as it is, so there --to must be given.`,
  options: [
    {
      flag: '--to OUT',
      meaning: 'the folder to write into; made where it is missing, never emptied of what is not ours',
    },
    { flag: '--only KIND', meaning: `what to make: ${outputKinds.join(', ')}` },
    {
      flag: '--for WHO',
      meaning: 'builder (unless said otherwise) or publisher: whose findings decide the exit status',
    },
    { flag: '--serve', meaning: 'then show it at an address on this computer until interrupted' },
    jsonOption,
  ],
  examples: ['publish demo/tide-lamp', 'publish ~/heap --to /tmp/guide --serve'],
  async run(words) {
    const { values, positionals } = readArguments(words, {
      to: { type: 'string' },
      only: { type: 'string', multiple: true },
      for: { type: 'string' },
      serve: { type: 'boolean' },
      json: { type: 'boolean' },
    });
    const place = onePlace(positionals, 'a folder');
    const only = kindsOf(values.only);
    const audience = audienceOf(values.for);
    const told = await withWorld(async (world) => {
      const folder = await world.openFolder(place);
      const output = await chooseOutput(folder, values.to ?? null, world);
      return unlessUnchanged(folder, output, world, [only, audience], async () =>
        tellOf(await publish(folder, output, world, { only, for: audience })),
      );
    });
    if (values.json) printJson(told.document);
    else process.stdout.write(told.words);
    if (values.serve && told.site !== null) await serveUntilInterrupted(told.site);
    return statusOf(told.verdict);
  },
};

function tellOf(publication: Publication) {
  const told = {
    document: publishDocument(publication),
    words: printPublication(publication),
    site: publication.outputs.find(({ kind }) => kind === 'site')?.path ?? null,
    verdict: publication.verdict,
  };
  return { told, originals: publication.cleaned.map(({ path }) => path) };
}

function kindsOf(words: readonly string[] | undefined): readonly OutputKind[] {
  const chosen = words?.flatMap((word) => word.split(',')) ?? outputKinds;
  return chosen.map((word) => {
    const kind = outputKinds.find((candidate) => candidate === word);
    if (kind === undefined)
      throw new UsageMistake(`Expected ${outputKinds.join(' or ')} after --only; found “${word}”.`);
    return kind;
  });
}

async function serveUntilInterrupted(path: string): Promise<void> {
  const server = await serveFolder(path);
  process.stderr.write(`Reading it at ${server.url} (Ctrl+C to stop)\n`);
  await new Promise<void>((resolve) => {
    process.once('SIGINT', resolve);
    process.once('SIGTERM', resolve);
  });
  await server.close();
}
