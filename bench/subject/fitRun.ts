// Grows the trees by which findSubject judges: two forests, the second on what the first guesses of pictures it did not see.
import { readFile, writeFile } from 'node:fs/promises';
import type { Picture } from '#imaging/pixels/picture.ts';
import { surveyPicture } from '#imaging/pixels/surveyPicture.ts';
import { chancesOf } from '#imaging/subject/chancesOf.ts';
import { closerCluesOf } from '#imaging/subject/closerCluesOf.ts';
import { cluesOf } from '#imaging/subject/cluesOf.ts';
import { surveyed } from '#imaging/subject/findSubject.ts';
import { drawnScene } from './drawnScene.ts';
import { growForest } from './growForest.ts';
import { decodePicture, demoPictures, fittedHalf, type LabelledPicture } from './labelledPictures.ts';

const [root = '.', output = '', labels] = process.argv.slice(2);
const drawn = 60;
const folds = 4;

const files: readonly LabelledPicture[] = [
  ...fittedHalf(await demoPictures(root)),
  ...(labels === undefined ? [] : (JSON.parse(await readFile(labels, 'utf8')) as LabelledPicture[])),
];
const pictures: { picture: Picture; box: LabelledPicture['box'] }[] = [];
for (const { file, box } of files) pictures.push({ picture: await decodePicture(file), box });
for (let seed = 0; seed < drawn; seed++) {
  const { picture, subject } = drawnScene(2 * seed);
  pictures.push({ picture, box: subject });
}
const looks = pictures.map(({ picture, box: [left, top, wide, high] }) => {
  const survey = surveyPicture(picture, surveyed);
  const isInside = Uint8Array.from(survey.l, (_, cell) => {
    const u = ((cell % survey.width) + 0.5) / survey.width;
    const v = (Math.floor(cell / survey.width) + 0.5) / survey.height;
    return u >= left && u < left + wide && v >= top && v < top + high ? 1 : 0;
  });
  return { survey, clues: cluesOf(survey), isInside };
});
const closer: typeof looks = [];
for (let fold = 0; fold < folds; fold++) {
  const forest = growForest(looks.filter((_, n) => n % folds !== fold));
  for (const look of looks.filter((_, n) => n % folds === fold)) {
    const { clues } = closerCluesOf(look.survey, chancesOf(forest, look.clues), look.clues);
    closer.push({ ...look, clues });
  }
}
const forests = { first: growForest(looks), second: growForest(closer) };
await writeFile(output, `${JSON.stringify(forests, null, 2)}\n`);
process.stdout.write(`${pictures.length} pictures, of which ${files.length} photos.\n`);
