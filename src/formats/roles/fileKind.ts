import type { Path } from '#core/place.ts';
import kinds from './fileKinds.json';

const sets = {
  text: new Set(kinds.text),
  prose: new Set(kinds.prose),
  table: new Set(kinds.table),
  picture: new Set(kinds.picture),
  clip: new Set(kinds.clip),
  design: new Set(kinds.design),
  binaryTable: new Set(kinds.binaryTable),
};

/** The ending of a file's name in lower case, without the dot; '' where there is none. */
export function endingOf(path: Path): string {
  const name = path.slice(path.lastIndexOf('/') + 1);
  const dot = name.lastIndexOf('.');
  return dot > 0 ? name.slice(dot + 1).toLowerCase() : '';
}

/** Whether a file's name says that it is of a kind; the bytes have the last word. */
export function looksLike(kind: keyof typeof sets, path: Path): boolean {
  return sets[kind].has(endingOf(path));
}

/** Whether the name says licence: LICENSE, COPYING, LICENCE-code.txt, files under LICENSES/. */
export function looksLikeLicence(path: Path): boolean {
  return (
    /(^|\/)(licen[cs]es?|copying|unlicense)([-_.][^/]*)?$/i.test(path) || /(^|\/)licen[cs]es\/[^/]+\.txt$/i.test(path)
  );
}
