import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Steps of the build in order, each with the wires that it adds, read from the guide and the wiring table. */
export async function readStages(build) {
  const wires = parseWiring(await readFile(join(build, 'wiring.csv'), 'utf8'));
  const guide = await readFile(join(build, 'guide.md'), 'utf8');
  return guide
    .split(/^### /m)
    .slice(1)
    .map((section) => {
      const joins = /^- Connects: (.*)$/m.exec(section)?.[1]?.split(', ') ?? [];
      return {
        step: section.split('\n', 1)[0],
        wires: joins.map((join) => wires.get(join) ?? wires.get(turned(join))),
      };
    });
}

function parseWiring(text) {
  const rows = text.trim().split(/\r?\n/).slice(1);
  return new Map(
    rows.map((row) => {
      const [from, to, , colour, gauge] = row.split(',');
      return [`${from} – ${to}`, { from, to, colour, gauge: Number.parseInt(gauge, 10) }];
    }),
  );
}

function turned(join) {
  return join.split(' – ').reverse().join(' – ');
}
