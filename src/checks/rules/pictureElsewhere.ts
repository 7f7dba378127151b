import type { Path } from '#core/place.ts';
import { defineCheck } from '../defineCheck.ts';
import { hostOf, type ShownPicture, shownPictures } from '../pictureRefs.ts';
import { numbered } from '../say.ts';
import { tinyPng } from '../tinyPng.ts';

export const pictureElsewhere = defineCheck({
  id: 'picture-elsewhere',
  title: 'The pictures of the guide lie in the build, not on another site.',
  weight: 'slows',
  audience: 'builder',
  why: 'Pictures that are fetched from somewhere else vanish when that place changes its mind.',
  basis: 'common practice: copy in, and keep the origin',
  needs: { subject: ['pictures'], witnesses: [] },
  *run({ build }) {
    const groups = new Map<string, { host: string; from: Path; shown: ShownPicture[] }>();
    for (const one of shownPictures(build)) {
      const host = hostOf(one.picture.url);
      if (host === null || isSign(one.picture.url)) continue;
      const key = `${one.from} ${host}`;
      const group = groups.get(key) ?? { host, from: one.from, shown: [] };
      group.shown.push(one);
      groups.set(key, group);
    }
    for (const { host, from, shown } of groups.values()) {
      yield {
        subjects: [`file:${from}`],
        mark: host,
        sides: shown.map(({ picture }) => picture.place),
        message: `${from} shows ${numbered(shown.length, 'picture')} that ${shown.length === 1 ? 'lies' : 'lie'} at ${host}.`,
        consequence: 'A builder without a connection, or after that site has changed, sees gaps instead.',
        remedy: 'Save the pictures into the folder and show those; keep the origin in the caption.',
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the picture is in the folder; a link to a site is a link',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder it as [the sheet](https://sheets.example/lamp.png) says.\n\n![The lamp](lamp.png)\n',
          'lamp.png': tinyPng,
        },
      },
      {
        title: 'a sign that a service draws afresh is no picture of the build',
        files: {
          'guide.md':
            '# Night light\n\n![passing](https://signs.example/lamp/badge.svg)\n\n## Fit the lamp\n\nSolder it.\n\n![The lamp](lamp.png)\n',
          'lamp.png': tinyPng,
        },
      },
    ],
    fails: [
      {
        title: 'one picture fetched from a site',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder it.\n\n![The lamp](https://pictures.example/lamp.jpg)\n',
        },
        expect: [{ file: 'guide.md', line: 7, words: '1 picture that lies at pictures.example' }],
      },
      {
        title: 'two from one site are one finding',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder it.\n\n![The lamp](//pictures.example/lamp.jpg)\n\n## Close it\n\n![Closed](https://pictures.example/closed.jpg)\n',
        },
        expect: [
          { file: 'guide.md', line: 7, words: '2 pictures' },
          { file: 'guide.md', line: 11 },
        ],
      },
    ],
  },
});

/** Build status and licence signs are meant to be fetched. */
function isSign(url: string): boolean {
  return /badge|shields?\b|\/actions\/workflows\//i.test(url);
}
