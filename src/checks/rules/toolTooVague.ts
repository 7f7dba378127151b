import type { Build } from '#core/build.ts';
import type { Tool } from '#core/part.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { guideWords } from '../guideWords.ts';
import table from '../knowledge/vagueTools.json';
import { fittedRows, rowWords } from '../partWords.ts';
import { listed } from '../say.ts';
import { isWrittenOut } from '../writtenGuide.ts';

export const toolTooVague = defineCheck({
  id: 'tool-too-vague',
  title: 'The list of tools tells the kind or size of a tool where that decides.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'Whoever brings ‘a screwdriver’ to a socket screw of 2 mm can go home again.',
  basis: table.source,
  needs: { subject: ['steps', 'tools'], witnesses: [] },
  *run({ build }) {
    if (!isWrittenOut(build)) return;
    const prose = guideWords(build);
    yield* onlySmall(build, prose);
    if (build.tools.length < 3) return;
    const open = build.tools.flatMap((tool) => {
      const kind = openKind(tool, build, prose);
      return kind === null ? [] : [{ tool, kind }];
    });
    const [first] = open;
    if (first === undefined) return;
    yield {
      subjects: ['build:tools'],
      sides: open.slice(0, 5).map(({ tool }) => tool.place),
      basis: 'read',
      message: `The list of tools names ${listed(open.map(({ tool }) => `‘${tool.name}’`))}, and nothing tells which: ${listed([...new Set(open.map(({ kind }) => kind.lacks))])}.`,
      consequence: 'A builder brings the wrong one, and finds out in the middle of a step.',
      remedy: 'Write kind and size beside the name, as it was used at the bench.',
    };
  },
  examples: {
    passes: [
      {
        title: 'told in the name, in the note, in a step; sets, and names that stand for all sizes',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nDrive the screws with the 2.5 mm hex key.\n\n## Drill it\n\nDrill.\n\n## Wire it\n\nConnect the USB cable to the USB-C socket.\n',
          'tools.csv':
            'tool,note\nPhillips screwdriver,\nHex key,\nDrill bit,6 mm\nUSB cable,\nAdjustable spanner,\nSet of spanners,\nCrimping tool,for JST-PH contacts\n',
        },
      },
      {
        title: 'the screws of the parts list tell the key',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nDrive it.\n\n## Turn it\n\nTurn it.\n\n## Close it\n\nClose it.\n',
          'parts.csv': 'Quantity,Description\n4,"Socket head screw M3 x 8"\n1,White LED\n1,Base\n',
          'tools.csv': 'tool,note\nHex key,\nSoldering iron,\nPliers,\n',
        },
      },
    ],
    fails: [
      {
        title: 'a screwdriver and a crimping tool',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nDrive it.\n\n## Crimp it\n\nCrimp it.\n\n## Close it\n\nClose it.\n',
          'tools.csv': 'tool,note\nScrewdriver,a good one\nCrimping tool,\nSoldering iron,\n',
        },
        expect: [{ file: 'tools.csv', line: 2, words: '‘Screwdriver’ and ‘Crimping tool’' }],
      },
      {
        title: 'a cable without its plugs',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nFit it.\n\n## Load it\n\nPlug it in.\n\n## Close it\n\nClose it.\n',
          'tools.csv': 'tool,note\nUSB cable,\nSoldering iron,\nSide cutters,\n',
        },
        expect: [{ file: 'tools.csv', line: 2, words: 'which plugs' }],
      },
      {
        title: 'a small one, and no word of how small',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nFit it.\n\n## Turn it\n\nTurn it.\n\n## Close it\n\nClose it.\n',
          'parts.csv': 'Quantity,Description\n4,M2.5 × 6 pan head screw\n1,White LED\n1,Base\n',
          'tools.csv': 'tool,note\nSmall phillips screwdriver,\n',
        },
        expect: [{ file: 'tools.csv', line: 2, words: 'not which size' }],
      },
      {
        title: 'a screwdriver for screws that tell their thread alone',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nDrive it.\n\n## Turn it\n\nTurn it.\n\n## Close it\n\nClose it.\n',
          'parts.csv': 'Quantity,Description\n4,M2 screw 6 mm\n1,White LED\n1,Base\n',
          'tools.csv': 'tool,note\nScrewdriver,\nSoldering iron,\nPliers,\n',
        },
        expect: [{ file: 'tools.csv', line: 2, words: '‘Screwdriver’' }],
      },
    ],
  },
});

/** 'Small' beside a screwdriver says that there are sizes, and not which. */
function* onlySmall(build: Build, prose: string): Iterable<FindingDraft> {
  const relative = build.tools.filter(({ name, note, link }) => {
    const words = `${name} ${note ?? ''}`;
    return (
      link === null &&
      /\b(?:screw ?driver|spanner|wrench|hex key|allen key)$/iu.test(name.trim()) &&
      bare.test(words) &&
      !/\d/u.test(words)
    );
  });
  const [first] = relative;
  if (first === undefined || sized.test(prose)) return;
  const cross = relative.some(({ name }) => /phillips|cross|pozi/iu.test(name));
  const size = cross ? recessOf(build) : null;
  yield {
    subjects: ['build:tools'],
    mark: 'relative',
    sides: relative.slice(0, 5).map(({ place }) => place),
    weight: 'tidy',
    basis: 'read',
    message: `The list of tools says of ${listed(relative.map(({ name }) => `‘${name}’`))} that it is small or large, and not which size it is.`,
    consequence: 'A builder brings one that slips out of the screws and rounds them.',
    remedy:
      size === null
        ? 'Write the size that was used.'
        : `Write the size; for screws of M${size.thread} it is mostly PH${size.recess}.`,
  };
}

const bare = /\b(?:small|little|tiny|large|big|medium)\b/iu;
const sized = /\bP[HZ] ?[0-4]\b|\b#[0-4]\b|\bno\. ?[0-4]\b/iu;

/** The cross recess of the only thread that the list's screws have (ISO 7045 and ISO 4757, from memory). */
function recessOf(build: Build): { thread: string; recess: number } | null {
  const threads = fittedRows(build).flatMap((part) =>
    /\bscrews?\b/iu.test(part.description) ? (/\bM ?(\d(?:\.\d)?)/u.exec(rowWords(part))?.[1] ?? []) : [],
  );
  const [thread, another] = [...new Set(threads)];
  const recess = thread === undefined || another !== undefined ? undefined : recesses[thread];
  return thread === undefined || recess === undefined ? null : { thread, recess };
}

const recesses: Readonly<Record<string, number>> = { '1.6': 0, '2': 1, '2.5': 1, '3': 1, '4': 2, '5': 2, '6': 3 };

interface Kind {
  readonly name: RegExp;
  readonly told: RegExp;
  readonly turnsScrews: boolean;
  readonly lacks: string;
}

const kinds: readonly Kind[] = table.tools.map(({ name, told, turnsScrews, lacks }) => ({
  name: new RegExp(`\\b(?:${name.join('|')})$`, 'iu'),
  told: new RegExp(told.join('|'), 'iu'),
  turnsScrews,
  lacks,
}));
const general = new RegExp(table.general.join('|'), 'iu');

const screw = /\bM\d|\bscrews?\b.*\d/iu;
/** Words by which a screw tells what turns it. */
const head =
  /\b(?:heads?|socket|hex\p{L}*|allen|cross|phillips|pozi\p{L}*|torx|slot\p{L}*|pan|countersunk|button|ISO|DIN|P[HZ] ?\d|T\d+)\b/iu;

/** The kind of a tool of which nothing tells size or sort: not its row, nor a sentence of the guide, nor the screws. */
function openKind({ name, note, link }: Tool, build: Build, prose: string): Kind | null {
  const kind = kinds.find((one) => one.name.test(name.trim()));
  const words = `${name} ${note ?? ''}`;
  if (kind === undefined || link !== null || kind.told.test(words) || general.test(words)) return null;
  const noun = new RegExp(kind.name.source.replace(/\$$/, ''), 'iu');
  const isTold = prose
    .split(/(?<=[.!?])\s|\n/u)
    .some((sentence) => noun.test(sentence) && (kind.told.test(sentence) || general.test(sentence)));
  const screws = fittedRows(build).some((part) => screw.test(rowWords(part)) && head.test(rowWords(part)));
  return isTold || (kind.turnsScrews && screws) ? null : kind;
}
