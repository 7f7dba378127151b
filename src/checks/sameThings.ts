import { tokensOf } from '#notation/names.ts';
import table from './knowledge/sameThings.json';

export interface SameThing {
  readonly name: string;
  readonly others: readonly string[];
  /** Whether the other names mean other things of a build as well. */
  readonly apart: boolean;
}

/** What else makers call a thing of this name, in the singular; null where nothing is known. */
export function sameThing(name: string): SameThing | null {
  const group = table.groups.find(({ names }) => names.some((one) => one === name || plain(one) === name));
  if (group === undefined) return null;
  return { name, others: group.names.filter((one) => plain(one) !== plain(name)), apart: group.apart };
}

function plain(name: string): string {
  return tokensOf(name).join('');
}
