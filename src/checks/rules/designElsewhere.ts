import type { TextPlace } from '#core/place.ts';
import { plainText } from '#core/text.ts';
import { defineCheck } from '../defineCheck.ts';
import { everySection } from '../everySection.ts';
import { everyInline, runsOf } from '../runningText.ts';
import { listed } from '../say.ts';

export const designElsewhere = defineCheck({
  id: 'design-elsewhere',
  title: 'Files from which a board or a part is made lie in the folder.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A link to the newest files leads to another revision than the one that the guide was written for.',
  basis: 'common practice: what is ordered or cut is part of the build',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    for (const { what, words, files } of kinds) {
      if (build.files.some(({ path }) => files.test(path))) continue;
      const links = everySection(build).flatMap((section) => runsOf(section).flatMap((run) => leading(run, words)));
      const [first] = links;
      if (first === undefined) continue;
      yield {
        subjects: ['build:files'],
        mark: what,
        sides: links.slice(0, 5).map(({ place }) => place),
        basis: 'read',
        message: `The guide leads to ${what} elsewhere (${listed([...new Set(links.map((link) => `‘${link.words}’`))], 3)}); the folder holds none.`,
        consequence:
          'A builder orders or makes whatever lies there on that day, which may not fit the guide, or finds nothing.',
        remedy: 'Put the files that you had made into the folder; else name their release beside the link.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the files are here as well',
        files: {
          'guide.md':
            '# Lamp\n\nOrder it from the [Gerber files](https://code.example/lamp/releases).\n\n## Fit it\n\nSolder D1.\n',
          'board/gerber.zip': 'PK',
          'board/lamp.gbr': 'G04*\n',
        },
      },
      {
        title: 'links to programs and to explanations',
        files: {
          'guide.md':
            '# Lamp\n\nInstall [KiCad](https://cad.example/get). Read [what a Gerber file is](https://notes.example/gerber).\n\n## Fit it\n\nSolder D1.\n',
        },
      },
    ],
    fails: [
      {
        title: 'the board',
        files: {
          'guide.md':
            '# Lamp\n\n## Order the board\n\nTake the [Gerber files of the lamp](https://code.example/lamp/releases) and order two.\n\n## Fit it\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'Gerber files of the lamp' }],
      },
      {
        title: 'the printed case',
        files: {
          'guide.md':
            '# Lamp\n\n## Print the case\n\nPrint the [STL files](https://code.example/lamp/stl) in PETG.\n\n## Fit it\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'STL files' }],
      },
    ],
  },
});

const kinds: readonly { what: string; words: RegExp; files: RegExp }[] = [
  {
    what: 'files of the board',
    words:
      /\bgerbers?\b(?: (?:files?|data|archive|zip))|\bgerbers\b|\b(?:kicad|eagle|easyeda|altium|pcb|board|design) (?:projects?|files?|sources?)\b/iu,
    files: /\.(?:gbr|ger|gtl|gbl|gto|gbo|gko|drl|kicad_pcb|brd|pcbdoc|pcb)$|gerber[^/]*\.(?:zip|rar|7z)$/iu,
  },
  {
    what: 'models of printed or cut parts',
    words: /\b(?:stl|step|3mf|dxf|cad|3d) (?:files?|models?)\b|\bSTLs\b/iu,
    files: /\.(?:stl|step|stp|3mf|obj|scad|f3d|fcstd|dxf|svg|amf)$/iu,
  },
];

/** Links to the web whose words name such files as things to take. */
function leading(
  { nodes, place }: { nodes: Parameters<typeof plainText>[0]; place: TextPlace },
  pattern: RegExp,
): { words: string; place: TextPlace }[] {
  return everyInline(nodes).flatMap((node) => {
    if (node.kind !== 'link' || !/^https?:/iu.test(node.url)) return [];
    const words = plainText([node]).replace(/\s+/gu, ' ').trim();
    return pattern.test(words) && !/\b(?:what|how|why|guide|tutorial|viewer)\b/iu.test(words) ? [{ words, place }] : [];
  });
}
