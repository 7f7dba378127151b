import { type Claim, declared } from '#core/claim.ts';
import type { Ref } from '#core/part.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { WrittenFact } from '#core/step.ts';
import { type KnownThings, plainPath } from '../knownThings.ts';
import { type FactItem, itemsOf, type Reading } from './reading.ts';

export interface Load {
  readonly path: Path;
  readonly onto: Ref | null;
  readonly exists: boolean;
}

/** An arrow, or a word for it in the languages of the labels. */
const arrow = /\s*(?:→|->|=>|⇒)\s*|\s+(?:onto|on to|to|into|auf|sur|en)\s+/;

/** `Code: firmware/main.cpp → U1`: a file or folder of the build, and the board that it is loaded on to. */
export function readLoads(fact: WrittenFact, known: KnownThings): Reading<Load> {
  const claims: Claim<Load>[] = [];
  const problems: Problem[] = [];
  for (const item of itemsOf(fact)) {
    const [path = '', board, ...more] = item.text.split(arrow).map(bare);
    if (path === '' || more.length > 0 || /^[a-z][a-z0-9+.-]+:/i.test(path)) {
      problems.push(noCode(item));
      continue;
    }
    const onto = board === undefined ? null : boardNamed(board, known);
    if (board !== undefined && onto === null) problems.push(noBoard(item, board));
    const found = known.pathNamed(path, fact.place.file);
    claims.push(declared({ path: found ?? plainPath(path), onto, exists: found !== null }, item.place));
  }
  return { claims, problems };
}

/** Without backticks; of a link, what it points at. */
function bare(text: string): string {
  const target = /^\[[^\]]*\]\(<?([^)>]*)>?\)$/.exec(text.trim())?.[1];
  return (target ?? text)
    .trim()
    .replace(/^`(.*)`$/, '$1')
    .trim();
}

function boardNamed(name: string, known: KnownThings): Ref | null {
  const ref = name.toUpperCase();
  if (known.refs.has(ref)) return ref;
  return known.partNamed(name.replace(/^the\s+/i, ''))?.refs[0] ?? null;
}

function noCode({ text, place }: FactItem): Problem {
  return {
    place,
    message: `'${text}' cannot be read as code to load. Expected a file or folder of the build and the board, such as firmware/main.cpp → U1.`,
    remedy: 'Name the file by its path inside the build folder.',
  };
}

function noBoard({ place }: FactItem, board: string): Problem {
  return {
    place,
    message: `'${board}' is no part of the parts list or the wiring; expected the reference of the board that the code runs on.`,
    remedy: 'Write its reference after the arrow, such as → U1.',
  };
}
