import type { Build } from '#core/build.ts';
import type { Edit } from '#core/edit.ts';
import type { Path } from '#core/place.ts';
import type { PictureRef } from '#core/text.ts';
import { defineCheck } from '../defineCheck.ts';
import { isOnOwnMachine, shownPictures } from '../pictureRefs.ts';
import { tinyPng } from '../tinyPng.ts';

export const pictureMissing = defineCheck({
  id: 'picture-missing',
  title: 'Every picture that the guide shows is there, spelled as on disk.',
  weight: 'slows',
  audience: 'builder',
  why: 'A picture that shows on the maker’s disk and on nobody else’s leaves a gap exactly where words were not enough.',
  basis: 'common practice: paths are compared case by case, as web servers do',
  needs: { subject: ['pictures'], witnesses: [] },
  *run({ build }) {
    const paths = build.files.map(({ path }) => path);
    for (const { picture, from } of shownPictures(build)) {
      const own = isOnOwnMachine(picture.url);
      if (!own && (picture.path === null || picture.exists || liesUnderSiteRoot(picture.url, paths))) continue;
      const meant = own ? null : nearest(picture, paths);
      const otherCase = meant !== null && meant.toLowerCase() === picture.path?.toLowerCase();
      yield {
        subjects: [`file:${picture.path ?? picture.url}`],
        sides: [picture.place],
        message: own
          ? `The guide shows ${picture.url}, which lies on one machine alone.`
          : otherCase
            ? `The guide shows ${picture.path}; on disk it is spelled ${meant}.`
            : `The guide shows ${picture.path}; there is no such file.${meant === null ? '' : ` A file of that name lies at ${meant}.`}`,
        consequence: 'A builder sees a gap instead of the picture.',
        remedy:
          meant === null
            ? 'Put the picture into the folder, or take it out of the text.'
            : `Write ${pathFrom(from, meant)} where the text says ${picture.url}.`,
        mend: meant === null ? null : respelled(build, picture, from, meant),
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'a picture that is there, with a blank in its name',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n\n![The lamp](photos/lamp%20one.png)\n',
          'photos/lamp one.png': tinyPng,
        },
      },
      {
        title: 'a path that a site resolves from its root, and a picture in a code block',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder it.\n\n![The lamp](/photos/lamp.png)\n\n```\n![not shown](nowhere.png)\n```\n',
          'site/photos/lamp.png': tinyPng,
        },
      },
    ],
    fails: [
      {
        title: 'on a page beside the guide, to which a site generator leads',
        files: {
          'guide.md':
            '# Night light\n\nWhere to buy is told [elsewhere][buying].\n\n## Fit the lamp\n\nSolder it.\n\n[buying]: <{{ site.base }}/buying.html>\n',
          'buying.md': '# Where to buy\n\n![The shelf](photos/shelf.png)\n',
        },
        expect: [{ file: 'buying.md', line: 3, words: 'photos/shelf.png' }],
      },
      {
        title: 'never added',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder it.\n\n![The lamp](photos/lamp.png)\n\n![The flat side](photos/flat.png)\n',
          'photos/lamp.png': tinyPng,
        },
        expect: [{ file: 'guide.md', line: 9, words: 'photos/flat.png' }],
      },
      {
        title: 'capitals that only some disks forgive',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder it.\n\n![The lamp](photos/lamp.png)\n',
          'photos/lamp.PNG': tinyPng,
        },
        expect: [{ file: 'guide.md', line: 7, words: 'spelled photos/lamp.PNG' }],
      },
      {
        title: 'a picture of the maker’s own disk',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\n![The lamp](file:///home/someone/lamp.png)\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: 'one machine' }],
      },
    ],
  },
});

/** Sites resolve `media/x.png` from a root of their own; a path with a folder that ends a real one is such a path. */
function liesUnderSiteRoot(url: string, paths: readonly Path[]): boolean {
  const tail = decoded(url.split(/[?#]/)[0] ?? url).replace(/^\//, '');
  return tail.includes('/') && !tail.startsWith('.') && paths.some((path) => path.endsWith(`/${tail}`));
}

/** The file that was probably meant: the same path in other capitals, or the only one of that name. */
function nearest({ path, url }: PictureRef, paths: readonly Path[]): Path | null {
  const wanted = (path ?? url).toLowerCase();
  const sameButCase = paths.filter((one) => one.toLowerCase() === wanted);
  if (sameButCase.length === 1) return sameButCase[0] ?? null;
  const name = wanted.slice(wanted.lastIndexOf('/') + 1);
  const sameName = paths.filter((one) => one.toLowerCase().slice(one.lastIndexOf('/') + 1) === name);
  return sameName.length === 1 ? (sameName[0] ?? null) : null;
}

/** Puts the right path where the wrong one stands, if it stands there just once. */
function respelled(build: Build, { url, place }: PictureRef, from: Path, meant: Path): Edit | null {
  const source = build.texts.get(place.file);
  if (source === undefined || url === '') return null;
  const at = place.quote.indexOf(url);
  if (at < 0 || place.quote.indexOf(url, at + 1) >= 0) return null;
  const start = place.span[0] + at;
  return {
    file: place.file,
    base: source.hash,
    changes: [{ span: [start, start + url.length], text: pathFrom(from, meant) }],
    why: `the picture lies at ${meant}`,
  };
}

/** A path as Markdown takes it, without blanks and brackets. */
function pathFrom(from: Path, to: Path): string {
  return encodeURI(relativePath(from, to)).replace(/[()]/g, (c) => (c === '(' ? '%28' : '%29'));
}

function relativePath(from: Path, to: Path): string {
  const here = from.split('/').slice(0, -1);
  const there = to.split('/');
  let shared = 0;
  while (shared < here.length && shared < there.length - 1 && here[shared] === there[shared]) shared++;
  return [...here.slice(shared).map(() => '..'), ...there.slice(shared)].join('/');
}

function decoded(url: string): string {
  try {
    return decodeURIComponent(url);
  } catch {
    return url;
  }
}
