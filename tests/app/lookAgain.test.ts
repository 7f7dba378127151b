import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { readProject } from '../projects/readProject.ts';
import { runs } from '../runs.ts';

/** One slip or change of a maker's: what it does to a line at a share of a file. */
const edit = fc.record({
  file: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  does: fc.constantFrom('drop', 'double', 'swap', 'reword', 'count', 'add', 'section', 'undo'),
});

type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never;

function edited(text: string, { at, does }: Edit, untouched: string): string {
  const lines = text.split('\n');
  const index = Math.floor(at * lines.length);
  const line = lines[index] ?? '';
  if (does === 'undo') return untouched;
  if (does === 'drop') lines.splice(index, 1);
  if (does === 'double') lines.splice(index, 0, line);
  if (does === 'swap') lines.splice(index, 2, lines[index + 1] ?? '', line);
  if (does === 'reword') lines[index] = line.replace(/(\p{L}{4,}) (\p{L}+)/u, '$2 $1');
  if (does === 'count') lines[index] = line.replace(/\d+/, (digits) => String(Number(digits) + 1));
  if (does === 'add') lines.splice(index, 0, 'Solder R1 with care. The USB cable carries 5 V.', '');
  if (does === 'section') {
    const next = lines.findIndex((one, number) => number > index && one.startsWith('## '));
    if (next >= 0) lines.splice(index, 0, ...lines.splice(next, 6));
  }
  return lines.join('\n');
}

const day = '2026-03-01T18:00:00Z';

/** A memory that lasts for one look. */
function forgetfulMemory() {
  let looks = 0;
  const rememberForNow =
    <K, T>(compute: (key: K) => T, answers = new Map<K, T>(), look = { number: 0 }) =>
    (key: K): T => {
      if (look.number !== looks) answers.clear();
      look.number = looks;
      const answer = answers.has(key) ? (answers.get(key) as T) : compute(key);
      answers.set(key, answer);
      return answer;
    };
  const remember = <K, T>(compute: (key: K) => T) => rememberForNow(compute);
  return { memory: { remember, rememberFor: remember }, forget: () => void looks++ };
}

/** A desk on which a folder lies open; a forgetful one does everything anew at each look. */
async function openDesk(files: ReadonlyMap<string, string>, { forgets }: { forgets: boolean }) {
  const { memory, forget } = forgetfulMemory();
  vi.resetModules();
  if (forgets) vi.doMock('#core/remember.ts', () => memory);
  else vi.doUnmock('#core/remember.ts');
  const [{ check }, { checkDocument }, { rehearseDocument }, { memoryFolder }, { memoryCache }, { openWorld }] =
    await Promise.all([
      import('#app/check.ts'),
      import('#app/documents/checkDocument.ts'),
      import('#app/documents/rehearseDocument.ts'),
      import('#outside/files/memoryFolder.ts'),
      import('#outside/cache/memoryCache.ts'),
      import('#outside/openWorld.ts'),
    ]);
  const cache = memoryCache();
  const world = { ...openWorld(), openCache: async () => cache, now: () => day };
  const folder = memoryFolder(Object.fromEntries(files));
  return {
    write: (path: string, text: string) => folder.write(path, new TextEncoder().encode(text)),
    /** All that a look tells, as text. */
    async look() {
      forget();
      const seen = await check(folder, world, { for: 'publisher' });
      const { build, facts } = seen.judged;
      return {
        check: JSON.stringify(checkDocument(seen)),
        rehearse: JSON.stringify(rehearseDocument(seen)),
        impact: JSON.stringify(seen.impact),
        facts: JSON.stringify(facts),
        build: JSON.stringify(build),
      };
    },
  };
}

/** Where two looks begin to differ, with some of what each tells from there. */
function differences(a: Readonly<Record<string, string>>, b: Readonly<Record<string, string>>): string[] {
  return Object.entries(a).flatMap(([name, text]) => {
    const other = b[name] ?? '';
    if (text === other) return [];
    const at = Math.max(0, [...text].findIndex((sign, index) => sign !== other[index]) - 80);
    return [`${name}: ${text.slice(at, at + 200)} | ${other.slice(at, at + 200)}`];
  });
}

describe('looking again after an edit', () => {
  it.each(['tide-lamp', 'stale-air', 'twin-pad'])(
    'at %s tells what the first look at the same files tells, edit after edit',
    async (name) => {
      // Without its pictures, which take long to look at and are never edited here.
      const texts = new Map(
        [...readProject(name)].flatMap(([path, text]) => (typeof text === 'string' ? [[path, text]] : [])),
      );
      const pages = [...texts.keys()].filter((path) => path.endsWith('.md'));
      const others = [...texts.keys()].filter((path) => /\.(?:csv|tsv|ya?ml|ino|cpp|h|py)$/.test(path));
      const paths = [...others, ...Array.from({ length: 3 }, () => pages).flat()];
      const kept = await openDesk(texts, { forgets: false });
      const anew = await openDesk(texts, { forgets: true });
      await kept.look();
      await anew.look();
      const now = new Map(texts);
      for (const one of fc.sample(fc.noBias(edit), { numRuns: runs(12), seed: 20260301 })) {
        const path = paths[Math.floor(one.file * paths.length)] ?? '';
        const text = edited(now.get(path) ?? '', one, texts.get(path) ?? '');
        now.set(path, text);
        await kept.write(path, text);
        await anew.write(path, text);
        expect(differences(await kept.look(), await anew.look()), `${one.does} in ${path}`).toEqual([]);
      }
    },
    300_000,
  );
});
