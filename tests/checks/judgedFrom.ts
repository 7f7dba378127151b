import { readBuild } from '#app/openBuild.ts';
import type { World } from '#app/ports.ts';
import type { ExampleFiles } from '#checks/defineCheck.ts';
import type { Judged } from '#core/assembled.ts';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { openWorld } from '#outside/openWorld.ts';
import { readFacts } from '#prose/readFacts.ts';
import { rehearse } from '#rehearsal/rehearse.ts';

/** Pictures that several folders share are looked into once. */
const cache = memoryCache();
const world: World = { ...openWorld(), openCache: async () => cache };

/** A folder in memory, read and rehearsed by the program's own readers. */
export async function judgedFrom(files: ExampleFiles): Promise<Judged> {
  const build = await readBuild(memoryFolder(files), world);
  const facts = readFacts(build);
  return { build, facts, ledger: rehearse(build, facts), asOf: '2026-01-01' };
}
