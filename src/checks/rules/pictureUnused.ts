import type { Build } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import { looksLike } from '#formats/roles/fileKind.ts';
import { isBesideTheProduct } from '#formats/roles/skipFile.ts';
import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { shownPictures } from '../pictureRefs.ts';
import { listed } from '../say.ts';
import { tinyPng } from '../tinyPng.ts';

export const pictureUnused = defineCheck({
  id: 'picture-unused',
  title: 'In a folder of pictures that the guide shows, it shows them all.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A picture that no page shows any more is an old revision, or the very picture that a step lacks.',
  basis: 'common practice: the files of the picture folder, less those that a text names',
  needs: { subject: ['pictures'], witnesses: [] },
  *run({ build }) {
    for (const { folder, shown, open } of pictureFolders(build)) {
      if (open.length === 0 || shown < 3 || open.length > shown) continue;
      yield {
        subjects: [`file:${folder}`],
        sides: open.slice(0, 5).map((file) => ({ kind: 'file', file })),
        message: `${folder === '' ? 'The folder' : folder} holds ${shown} pictures that the guide shows, and ${open.length} that no text names: ${listed(open.map(nameOf))}.`,
        consequence: 'Who publishes them ships what nobody sees, or leaves out a picture that a step was to show.',
        remedy: 'Show them where they belong, or move them out of the folder.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'all are shown, in the guide, in the log or as another form of the same picture',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\n![The board](photos/a.png) ![The lamp](photos/b%20b.png) ![The lid](photos/c.png)\n',
          'log.md': '# Log\n\n## 2026-03-01\n\nBroken lid, see photos/d.png.\n',
          'photos/a.png': tinyPng,
          'photos/b b.png': tinyPng,
          'photos/c.png': tinyPng,
          'photos/c.jpg': tinyPng,
          'photos/d.png': tinyPng,
        },
      },
      {
        title: 'a heap of photos of which the guide shows a few',
        files: {
          'guide.md': '# Night light\n\n## Fit it\n\n![The board](shots/a.png)\n\n![The lamp](shots/b.png)\n',
          'shots/a.png': tinyPng,
          'shots/b.png': tinyPng,
          'shots/c.png': tinyPng,
          'shots/d.png': tinyPng,
          'shots/e.png': tinyPng,
        },
      },
    ],
    fails: [
      {
        title: 'one of four',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\n![The board](photos/a.png)\n\n![The lamp](photos/b.png)\n\n![The lid](photos/c.png)\n',
          'photos/a.png': tinyPng,
          'photos/b.png': tinyPng,
          'photos/c.png': tinyPng,
          'photos/old-lid.png': tinyPng,
        },
        expect: [{ file: 'photos/old-lid.png', words: '1 that no text names' }],
      },
      {
        title: 'two folders, each judged for itself',
        files: {
          'guide.md':
            '# Night light\n\n## Fit it\n\n![Top](a/a.png) ![Side](a/b.png) ![Lid](a/c.png)\n\n![Lamp](b/a.png) ![Base](b/b.png) ![Plug](b/c.png)\n',
          'a/a.png': tinyPng,
          'a/b.png': tinyPng,
          'a/c.png': tinyPng,
          'a/x.png': tinyPng,
          'b/a.png': tinyPng,
          'b/b.png': tinyPng,
          'b/c.png': tinyPng,
          'b/y.png': tinyPng,
          'b/z.png': tinyPng,
        },
        expect: [
          { file: 'a/x.png', words: '1 that no text' },
          { file: 'b/y.png', words: '2 that no text' },
        ],
      },
    ],
  },
});

interface PictureFolder {
  readonly folder: Path;
  readonly shown: number;
  /** Pictures that no text names. */
  readonly open: readonly Path[];
}

function pictureFolders(build: Build): PictureFolder[] {
  const shown = new Set(shownPictures(build).flatMap(({ picture }) => picture.path ?? []));
  const words = [...build.texts.values()].map(({ text }) => text.toLowerCase()).join('\n');
  const pictures = build.files.map(({ path }) => path).filter((path) => looksLike('picture', path));
  const folders = groupedBy(pictures, folderOf);
  return [...folders].map(([folder, paths]) => {
    const stems = new Set(paths.filter((path) => shown.has(path)).map(stemOf));
    const open = paths.filter((path) => !isNamed(path, words, stems) && !shown.has(path) && !isBesideTheProduct(path));
    return { folder, shown: paths.filter((path) => shown.has(path)).length, open };
  });
}

/** By a text, whatever it does with it; as another form of a picture that is shown; or as a sign of the page itself. */
function isNamed(path: Path, words: string, stems: ReadonlySet<string>): boolean {
  const name = nameOf(path).toLowerCase();
  return (
    words.includes(name) ||
    words.includes(encodeURI(name)) ||
    stems.has(stemOf(path)) ||
    /favicon|logo|banner|cover|social|thumb|icon/.test(name)
  );
}

function folderOf(path: Path): Path {
  return path.slice(0, Math.max(0, path.lastIndexOf('/')));
}

function nameOf(path: Path): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

function stemOf(path: Path): string {
  return path.replace(/\.[^./]+$/, '').toLowerCase();
}
