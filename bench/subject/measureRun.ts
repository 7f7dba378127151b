// Measures findSubject and findBoard where the truth is known, and prints errors of both kinds.
import { readFile } from 'node:fs/promises';
import { findBoard } from '#imaging/board/findBoard.ts';
import type { Picture } from '#imaging/pixels/picture.ts';
import { findSubject } from '#imaging/subject/findSubject.ts';
import { drawnScene } from './drawnScene.ts';
import { decodePicture, demoPictures, fittedHalf, type LabelledPicture } from './labelledPictures.ts';

const [root = '.', labels] = process.argv.slice(2);
const drawn = 80;
/** Far from those that the trees were fitted on and the bounds set on. */
const firstSeed = 1000;
let milliseconds = 0;
let pictures = 0;

interface Outcome {
  readonly name: string;
  readonly overlap: number;
  /** Of the board's longer side; null where no whole board is in view or none was found. */
  readonly cornerError: number | null;
  readonly hasBoard: boolean | null;
  readonly isFound: boolean;
  readonly confidence: number;
}

const demo = await demoPictures(root);
const fitted = new Set(fittedHalf(demo));
const heldOut = demo.filter((each) => !fitted.has(each));
await report('the demo’s photos, half of the scenes that the trees were not fitted on', heldOut);
printOutcomes(
  'drawn scenes that nothing was fitted or set on',
  Array.from({ length: drawn }, (_, n) => {
    const { picture, subject, corners, kind } = drawnScene(firstSeed + n);
    return outcomeOf(picture, { name: `${kind} ${firstSeed + n}`, box: subject, corners });
  }),
);
if (labels !== undefined) {
  await report('labelled pictures', JSON.parse(await readFile(labels, 'utf8')) as readonly LabelledPicture[]);
}
print(`${(milliseconds / pictures).toFixed(0)} ms of processor time a picture for both, at 640 to 1024 pixels.`);

async function report(title: string, list: readonly LabelledPicture[]): Promise<void> {
  const outcomes: Outcome[] = [];
  for (const each of list) outcomes.push(outcomeOf(await decodePicture(each.file), each));
  printOutcomes(title, outcomes);
}

function outcomeOf(picture: Picture, truth: Pick<LabelledPicture, 'name' | 'box' | 'corners'>): Outcome {
  const before = process.cpuUsage();
  const board = findBoard(picture);
  const { box, confidence } = findSubject(picture, board);
  const used = process.cpuUsage(before);
  milliseconds += (used.user + used.system) / 1000;
  pictures++;
  return {
    name: truth.name,
    overlap: overlapOfBoxes(box, truth.box),
    cornerError: board && truth.corners ? cornerErrorOf(board.corners, truth.corners, picture) : null,
    hasBoard: truth.corners === undefined ? null : truth.corners !== null,
    isFound: board !== null,
    confidence,
  };
}

function printOutcomes(title: string, outcomes: readonly Outcome[]): void {
  const overlaps = outcomes.map(({ overlap }) => overlap);
  print(`${outcomes.length} pictures: ${title}`);
  print(
    `  subject: mean overlap ${mean(overlaps).toFixed(3)}, at least 0.5 in ${percent(overlaps, (each) => each >= 0.5)}`,
  );
  print(`    expected by itself ${mean(outcomes.map(({ confidence }) => confidence)).toFixed(3)}`);
  const whole = outcomes.filter(({ hasBoard }) => hasBoard === true);
  const none = outcomes.filter(({ hasBoard }) => hasBoard === false);
  if (whole.length > 0) {
    const errors = whole.map(({ cornerError }) => cornerError ?? Number.POSITIVE_INFINITY).sort((a, b) => a - b);
    const found = errors.filter((each) => Number.isFinite(each));
    print(
      `  board: ${whole.length} whole in view, ${found.length} found; corners within 1.5 % of its longer side in ` +
        `${percent(errors, (each) => each <= 0.015)} of all; at the median of those found ` +
        `${(100 * (found[found.length >> 1] ?? Number.NaN)).toFixed(2)} %, of all ${(100 * (errors[errors.length >> 1] ?? 0)).toFixed(2)} %`,
    );
  }
  if (none.length > 0)
    print(`  no board: ${none.length}, found all the same in ${none.filter(({ isFound }) => isFound).length}`);
  if (process.env.WORST !== undefined) {
    for (const { name, overlap } of outcomes
      .toSorted((a, b) => a.overlap - b.overlap)
      .slice(0, Number(process.env.WORST))) {
      print(`    ${overlap.toFixed(2)} ${name}`);
    }
  }
}

function overlapOfBoxes(one: LabelledPicture['box'], other: LabelledPicture['box']): number {
  const wide = Math.min(one[0] + one[2], other[0] + other[2]) - Math.max(one[0], other[0]);
  const high = Math.min(one[1] + one[3], other[1] + other[3]) - Math.max(one[1], other[1]);
  const shared = Math.max(0, wide) * Math.max(0, high);
  return shared / (one[2] * one[3] + other[2] * other[3] - shared);
}

/** Mean distance of the corners, whichever comes first, as a share of the board's longer side. */
function cornerErrorOf(
  found: readonly (readonly [number, number])[],
  truth: readonly (readonly [number, number])[],
  { width, height }: Picture,
): number {
  const far = (one: readonly [number, number] | undefined, other: readonly [number, number] | undefined) =>
    one && other ? Math.hypot((one[0] - other[0]) * width, (one[1] - other[1]) * height) : Number.NaN;
  const longer = Math.max(far(truth[0], truth[1]), far(truth[1], truth[2]));
  const errors = [0, 1, 2, 3].map((first) => mean(truth.map((corner, n) => far(found[(first + n) % 4], corner))));
  return Math.min(...errors) / longer;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function percent(values: readonly number[], holds: (value: number) => boolean): string {
  return `${((100 * values.filter(holds).length) / values.length).toFixed(0)} %`;
}

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}
