import { expect, test } from 'vitest';
import { assembled, paragraph, picture, shot, step } from '../../tests/site/smallBuild.ts';
import { composeGuide } from './composeGuide.ts';
import { wantAssets } from './wantAssets.ts';

const shots = [
  shot('a.jpg', 4000),
  shot('b.png', 700, 'png'),
  shot('c.heic', null, 'heic'),
  shot('d.jpg', 960),
  shot('unused.jpg', 4000),
];

function wantsOf(...paths: string[]) {
  const sections = [step('a', ...paths.map((path) => paragraph(picture(path))))];
  return wantAssets(composeGuide(assembled({ sections, build: { shots } }), { code: [] }));
}

test('a picture is wanted once at each width, never larger than it is', () => {
  expect(
    wantsOf('a.jpg', 'b.png', 'a.jpg', 'd.jpg').map(({ shot: path, width, format }) => [path, width, format]),
  ).toEqual([
    ['a.jpg', 480, 'jpeg'],
    ['a.jpg', 960, 'jpeg'],
    ['a.jpg', 1600, 'jpeg'],
    ['b.png', 480, 'png'],
    ['b.png', 700, 'png'],
    ['d.jpg', 480, 'jpeg'],
    ['d.jpg', 960, 'jpeg'],
  ]);
});

test('a picture of unknown width is wanted at every width, since a copy is never enlarged', () => {
  expect(wantsOf('c.heic').map(({ width, format }) => [width, format])).toEqual([
    [480, 'jpeg'],
    [960, 'jpeg'],
    [1600, 'jpeg'],
  ]);
});

test('a photo that the guide does not show is not wanted', () => {
  expect(wantsOf('a.jpg').some(({ shot: path }) => path === 'unused.jpg')).toBe(false);
});
