import type { Judged } from '#core/assembled.ts';
import type { Change } from '#core/change.ts';
import type { Finding } from '#core/finding.ts';
import type { Key } from '#core/key.ts';
import type { Place } from '#core/place.ts';
import { changesOf, type LateChange, type Timeline } from './changesOf.ts';
import { type Dependent, type DependentKind, dependentsOf } from './dependents.ts';

/** One thing to look at again after a change. */
export interface ImpactItem {
  /** Made of the change, its date and the thing; a later change of the same fact is another item. */
  readonly id: string;
  readonly kind: DependentKind;
  readonly place: Place;
  readonly why: string;
  readonly done: boolean;
}

/** A change, and everything that is older than it or now disagrees. */
export interface Impact {
  readonly changed: Key;
  /** What it is called where makers read it: 'R1, Resistor' or '‘Fit the lamp’'. */
  readonly name: string;
  readonly at: string;
  readonly isGone: boolean;
  /** Where it stands now; null for what is gone. */
  readonly place: Place | null;
  readonly items: readonly ImpactItem[];
  /** What the checks find about it now. */
  readonly findings: readonly Finding[];
}

/**
 * What is left to look at after each change since facts were first seen: the steps, captions, pictures, wiring rows
 * and code that depend on it and have not changed since. `done` are ids that the maker has ticked off. Changes with
 * nothing left to look at are not listed.
 */
export function impactOf(
  judged: Judged,
  history: readonly Change[],
  findings: readonly Finding[],
  done: readonly string[],
): Impact[] {
  const timeline = changesOf(history);
  const ticked = new Set(done);
  return timeline.late.flatMap((change) => {
    const items = dependentsOf(change, judged)
      .filter((dependent) => isOlder(dependent, change, timeline))
      .map((dependent) => itemFrom(dependent, change, ticked));
    const about = findings.filter(({ subjects }) => subjects[0] === change.key);
    if (items.length === 0 && about.length === 0) return [];
    const { name, place } = named(change, judged);
    return [
      {
        changed: change.key,
        name,
        at: change.at,
        isGone: change.isGone,
        place,
        items: distinct(items),
        findings: about,
      },
    ];
  });
}

/** What was edited at the change or after it has been looked at. */
function isOlder({ key, kind }: Dependent, change: LateChange, { since }: Timeline): boolean {
  if (key === null || kind === 'picture') return true;
  return key !== change.key && (since.get(key) ?? '') < change.at;
}

function itemFrom({ kind, key, place, why }: Dependent, change: LateChange, ticked: ReadonlySet<string>): ImpactItem {
  const thing = key ?? (place.kind === 'text' ? `${place.file} ${place.quote.slice(0, 40)}` : place.file);
  const id = `${change.key} ${change.at.slice(0, 10)} > ${kind} ${thing}`;
  return { id, kind, place, why, done: ticked.has(id) };
}

function distinct(items: readonly ImpactItem[]): ImpactItem[] {
  return [...new Map(items.map((item) => [item.id, item])).values()];
}

function named({ key }: LateChange, { build }: Judged): { name: string; place: Place | null } {
  const [subject, ...rest] = key.split(':');
  const id = rest.join(':');
  if (subject === 'part') {
    const part = build.parts.find((one) => one.id === id);
    const words = [part?.refs.join(', ') ?? '', part?.description ?? ''].filter((word) => word !== '');
    return { name: words.length === 0 ? id : words.join(', '), place: part?.place ?? null };
  }
  if (subject === 'connection') {
    const row = build.connections.find((one) => one.id === id);
    return { name: id.replace('~', ' – '), place: row?.place ?? null };
  }
  if (subject === 'step') {
    const section = build.instructions.sections.find((one) => one.id === id);
    return { name: `‘${section?.heading ?? id}’`, place: section?.place ?? null };
  }
  return { name: id, place: build.files.some(({ path }) => path === id) ? { kind: 'file', file: id } : null };
}
