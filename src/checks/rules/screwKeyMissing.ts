import type { Judged } from '#core/assembled.ts';
import type { Part } from '#core/part.ts';
import { defineCheck } from '../defineCheck.ts';
import fasteners from '../knowledge/fasteners.json';
import knowledge from '../knowledge/tools.json';
import { holdsWord } from '../listedTools.ts';
import { listed } from '../say.ts';

export const screwKeyMissing = defineCheck({
  id: 'screw-key-missing',
  title: 'The list of tools holds the key or screwdriver that fits each listed screw.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'The wrong key rounds the socket of a small screw at the first try.',
  basis: fasteners.source,
  needs: { subject: ['steps', 'parts', 'tools'], witnesses: [] },
  *run(judged) {
    const byKey = new Map<string, { key: Key; parts: Part[] }>();
    for (const part of judged.build.parts) {
      const key = part.fitted ? keyFor(part) : null;
      if (key === null || isListed(judged, key)) continue;
      const name = `${key.size} ${key.drive}`;
      const entry = byKey.get(name) ?? { key, parts: [] };
      entry.parts.push(part);
      byKey.set(name, entry);
    }
    for (const [name, { key, parts }] of byKey) {
      yield {
        subjects: [`tool:${name.replaceAll(' ', '-')}`],
        sides: parts.map(({ cells, place }) => cells.description ?? place).slice(0, 5),
        basis: 'read',
        message: `${listed(parts.map(({ description }) => `‘${description}’`))} ${parts.length === 1 ? 'takes' : 'take'} a ${nameOf(key)}; the list of tools holds none.`,
        consequence: 'A builder has to stop for it, or rounds the screw with what is at hand.',
        remedy: `Add ${nameOf(key)} to the list of tools.`,
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the key by its size, or in a set; a screw whose head is not told',
        files: {
          'guide.md': '# Night light\n\n## Close it\n\nDrive the screws.\n',
          'parts.csv':
            'Quantity,Description\n4,M3 × 10 socket head cap screw\n2,M2.5 pan head screw Torx\n2,M3 screw\n2,"M4 set screw, hexagon socket"\n',
          'tools.csv': 'tool,needed,note\nAllen key 2.5 mm,yes,\nTorx bit set,yes,\nHex key,yes,2 mm\n',
        },
      },
      {
        title: 'a screwdriver for a cross recess',
        files: {
          'guide.md': '# Night light\n\n## Close it\n\nDrive the screws.\n',
          'parts.csv': 'Quantity,Description\n4,"M3 × 8 pan head screw, cross recess"\n1,Lid\n',
          'tools.csv': 'tool,needed\nScrewdriver,yes\nSide cutters,yes\n',
        },
      },
    ],
    fails: [
      {
        title: 'hexagon sockets and a plain screwdriver',
        files: {
          'guide.md': '# Night light\n\n## Close it\n\nDrive the screws.\n',
          'parts.csv': 'Quantity,Description\n4,M3 × 10 socket head cap screw\n1,Lid\n',
          'tools.csv': 'tool,needed\nScrewdriver PH1,yes\nSide cutters,yes\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '2.5 mm hex key' }],
      },
      {
        title: 'a key of another size',
        files: {
          'guide.md': '# Night light\n\n## Close it\n\nDrive the screws.\n',
          'parts.csv': 'Quantity,Description\n4,"M3 × 6 button head screw, black"\n1,Lid\n',
          'tools.csv': 'tool,needed\nHex key 2.5 mm,yes\nSide cutters,yes\n',
        },
        expect: [{ file: 'parts.csv', line: 2, words: '2 mm hex key' }],
      },
    ],
  },
});

interface Key {
  readonly drive: keyof typeof knowledge.drives;
  /** '2.5 mm', 'PH1', 'T10'. */
  readonly size: string;
}

/** The key for a part whose description names one thread and one kind of head. */
function keyFor({ description, package: size }: Part): Key | null {
  const words = `${description} ${size ?? ''}`;
  const threads = new Set(
    [...words.matchAll(/(?<![\p{L}\p{N}])M\d{1,2}(?:\.\d)?(?![\p{L}\p{N}.])/gu)].map(([thread]) => thread),
  );
  const heads = fasteners.heads.filter((head) => holdsWord(words.toLowerCase(), head.words));
  const [thread] = threads;
  const [head] = heads;
  if (
    thread === undefined ||
    head === undefined ||
    threads.size > 1 ||
    new Set(heads.map(({ drive }) => drive)).size > 1
  )
    return null;
  const sizes = new Set(heads.map((one) => (one.sizes as Readonly<Record<string, string>>)[thread]));
  const [found] = sizes;
  if (found === undefined || sizes.size > 1 || !isDrive(head.drive)) return null;
  return { drive: head.drive, size: found };
}

function isDrive(name: string): name is Key['drive'] {
  return name in knowledge.drives;
}

/** A tool of the drive, in that size, in no size, or as a set. */
function isListed({ build, facts }: Judged, { drive, size }: Key): boolean {
  const declared = Object.values(facts.steps).flatMap(({ tools }) => tools.map(({ value }) => value));
  const names = [...build.tools.map(({ name, note }) => `${name} ${note ?? ''}`), ...declared].map((name) =>
    name.toLowerCase(),
  );
  return names.some((name) => {
    if (/\b(?:screwdriver|bit|driver)s? (?:bit )?(?:set|kit)\b/.test(name)) return true;
    if (!holdsWord(name, knowledge.drives[drive])) return false;
    const sizes = [...name.matchAll(/\b(?:\d+(?:[.,]\d+)?\s?mm|ph\d|t\d{1,2})\b/g)].map(([text]) =>
      text.replace(/\s/g, ''),
    );
    return (
      sizes.length === 0 || sizes.includes(size.toLowerCase().replace(/\s/g, '')) || holdsWord(name, knowledge.sets)
    );
  });
}

function nameOf({ drive, size }: Key): string {
  if (drive === 'cross recess') return `${size} screwdriver`;
  return drive === 'hexalobular' ? `${size} key (six-lobe socket)` : `${size} ${drive}`;
}
