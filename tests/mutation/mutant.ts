import { linesIn, type Project } from './project.ts';

/** A line of a file; lines count from 1. */
export interface Spot {
  readonly file: string;
  readonly line: number;
}

/** What a fault does to a builder, written down before anybody looks whether it is found. */
export interface Consequence {
  /** Lines of the changed files; the fault is found where a finding stands at one of them. */
  readonly at: readonly Spot[];
  /** Further lines that the fault makes wrong: findings there are of the same fault. */
  readonly reaches: readonly Spot[];
  readonly why: string;
}

/** One fault of a tired maker in a build that was right. */
export interface Mutant {
  readonly id: string;
  readonly build: string;
  readonly operator: string;
  readonly title: string;
  /** New contents by path; null takes the file away. */
  readonly changes: ReadonlyMap<string, string | Uint8Array | null>;
  readonly consequence: Consequence;
}

/** A fault before its lines are counted: places are lines of the clean build. */
export interface Draft {
  readonly title: string;
  readonly changes: readonly Change[];
  readonly at: readonly Spot[];
  readonly reaches?: readonly Spot[];
  readonly why: string;
}

/** A change of one file's lines; `null` in `order` is a line that was added, with its words in `added`. */
export interface Change {
  readonly file: string;
  /** Lines by their clean number, with new words. */
  readonly words?: ReadonlyMap<number, string>;
  /** Lines to leave out. */
  readonly without?: ReadonlySet<number>;
  /** All clean line numbers in another order. */
  readonly order?: readonly number[];
  /** Lines added after a clean line. */
  readonly after?: ReadonlyMap<number, readonly string[]>;
  /** The file under another name. */
  readonly renamed?: string;
}

export type Operator = (project: Project) => Draft[];

export function word(file: string, line: number, words: string): Change {
  return { file, words: new Map([[line, words]]) };
}

export function dropped(file: string, ...lines: number[]): Change {
  return { file, without: new Set(lines) };
}

/** Makes the files of a draft and counts its lines anew. */
export function mutantFrom(project: Project, operator: string, draft: Draft, number: number): Mutant {
  const changes = new Map<string, string | Uint8Array | null>();
  const moved = new Map<string, Map<number, Spot>>();
  for (const change of draft.changes) {
    const target = change.renamed ?? change.file;
    const content = project.files.get(change.file);
    if (change.renamed !== undefined) changes.set(change.file, null);
    if (typeof content !== 'string') {
      if (content !== undefined) changes.set(target, content);
      continue;
    }
    const { text, lines } = rewritten(linesIn(project, change.file), change);
    changes.set(target, text);
    moved.set(change.file, new Map([...lines].map(([before, line]) => [before, { file: target, line }])));
  }
  const now = (spots: readonly Spot[]) =>
    spots.flatMap((spot) => {
      const lines = moved.get(spot.file);
      return lines === undefined ? [spot] : (lines.get(spot.line) ?? []);
    });
  const at = now(draft.at);
  if (at.length === 0) throw new Error(`${project.name}, ${operator}: nothing is left to point at in ${draft.title}.`);
  return {
    id: `${project.name}/${operator.replaceAll(' ', '-')}/${number}`,
    build: project.name,
    operator,
    title: draft.title,
    changes,
    consequence: { at, reaches: now(draft.reaches ?? []), why: draft.why },
  };
}

function rewritten(before: readonly string[], change: Change): { text: string; lines: Map<number, number> } {
  const order = change.order ?? before.map((_, index) => index + 1);
  const text: string[] = [];
  const lines = new Map<number, number>();
  for (const number of order) {
    if (change.without?.has(number) !== true) {
      text.push(change.words?.get(number) ?? before[number - 1] ?? '');
      lines.set(number, text.length);
    }
    text.push(...(change.after?.get(number) ?? []));
  }
  return { text: text.join('\n'), lines };
}
