import { Failure } from '#core/failure.ts';

/** The parts of a path inside a folder. Throws `Failure('not-allowed')` for a path that names nothing or leads out. */
export function safePath(path: string): readonly string[] {
  const parts = path.split('/');
  const bad =
    path === '' ||
    path.includes('\0') ||
    parts.some((part) => part === '' || part === '.' || part === '..') ||
    (process.platform === 'win32' && /[\\:]/.test(path));
  if (bad) {
    throw new Failure(
      'not-allowed',
      `'${path.replaceAll('\0', '?')}' is no path inside the folder.`,
      'Give a path that starts at the folder and does not climb out of it.',
    );
  }
  return parts;
}
