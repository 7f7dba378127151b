import { Failure } from '#core/failure.ts';
import type { Path } from '#core/place.ts';
import type { BoardCorners, FlattenWish, FolderPort, World } from './ports.ts';

/** A flat view that was written. Sizes in pixels; the board takes the upper `boardHeight` rows. */
export interface Flattening {
  readonly file: Path;
  readonly to: string;
  readonly width: number;
  readonly height: number;
  readonly boardHeight: number;
  readonly pixelsPerMillimetre: number;
  readonly corners: BoardCorners;
  readonly size: FlattenWish['size'];
}

/** Writes a board from straight above into a new file. What lies there already is never written over. */
export async function flatten(
  folder: FolderPort,
  file: Path,
  output: FolderPort,
  to: Path,
  world: World,
  wish: FlattenWish,
): Promise<Flattening> {
  if (await output.exists(to)) {
    throw new Failure('bad-request', `${output.root}/${to} exists already.`, 'Name another file after --to.');
  }
  const pictures = await world.openPictures(folder, await world.openCache(folder, false));
  try {
    world.progress.report('Flattening the board', 0, null);
    const result = await pictures.flatten(file, wish);
    if (!result.ok) throw new Failure('bad-request', `${file}: ${result.reason}`, 'Nothing was written.');
    const { data, ...sizes } = result.value;
    await output.write(to, data, { base: null });
    return { file, to: `${output.root}/${to}`, ...sizes, size: wish.size };
  } finally {
    await pictures.close();
  }
}
