import type { Connection } from '#core/connection.ts';
import type { Part, PartsList, Tool } from '#core/part.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { rememberFor } from '#core/remember.ts';
import type { Role, RoleName } from '#core/settings.ts';
import { placeOf, type SourceText, spanOfLine } from '#core/sourceText.ts';
import type { Instructions, Section } from '#core/step.ts';
import { listItemsOf, tablesOf } from '#formats/guide/readGuide.ts';
import { readPartsBullets, readPartsTable } from '#formats/parts/readPartsBullets.ts';
import { readPartsList } from '#formats/parts/readPartsList.ts';
import { readToolBullets, readTools, readToolsTable } from '#formats/tools/readTools.ts';
import { readWiring, readWiringTable } from '#formats/wiring/readWiring.ts';
import { fileOfPlace, sectionOfPlace } from './filesOfRole.ts';

export interface Lists {
  readonly partsLists: readonly (PartsList & { readonly file: Path })[];
  /** All rows of all lists. Of a single list they are the very rows read before, as long as it does not change. */
  readonly parts: readonly Part[];
  readonly tools: readonly Tool[];
  readonly connections: readonly Connection[];
  readonly problems: readonly Problem[];
}

/** Lists on the way to being read. */
interface Gathered {
  readonly partsLists: (PartsList & { file: Path })[];
  readonly tools: (readonly Tool[])[];
  readonly connections: (readonly Connection[])[];
  readonly problems: Problem[];
}

/** Parts, tools and wiring, from tables of their own or from sections of the guide. */
export function readLists(
  roles: readonly Role[],
  texts: ReadonlyMap<Path, SourceText>,
  instructions: Instructions,
): Lists {
  const lists: Gathered = { partsLists: [], tools: [], connections: [], problems: [] };
  for (const place of placesOf(roles, 'parts')) {
    const source = texts.get(fileOfPlace(place));
    if (source !== undefined) addParts(lists, source, sectionsNamed(instructions, place, source));
  }
  for (const place of placesOf(roles, 'tools')) {
    const source = texts.get(fileOfPlace(place));
    if (source !== undefined) addTools(lists, source, sectionsNamed(instructions, place, source));
  }
  for (const place of placesOf(roles, 'wiring')) {
    const source = texts.get(fileOfPlace(place));
    if (source !== undefined) addWiring(lists, source, sectionsNamed(instructions, place, source));
  }
  const { partsLists, problems } = lists;
  return {
    partsLists,
    parts: joined(partsLists.map(({ parts }) => parts)),
    tools: joined(lists.tools),
    connections: joined(lists.connections),
    problems,
  };
}

function joined<T>(lists: readonly (readonly T[])[]): readonly T[] {
  const [only, ...others] = lists.filter(({ length }) => length > 0);
  return only !== undefined && others.length === 0 ? only : lists.flat();
}

// A table that did not change reads as before; ids of other lists can change how the rows of a parts list are named.
const firstPartsIn = rememberFor((source: SourceText) => readPartsList(source));
const partsIn = (source: SourceText, taken: ReadonlySet<string>) =>
  taken.size === 0 ? firstPartsIn(source) : readPartsList(source, taken);
const toolsIn = rememberFor(readTools);
const wiringIn = rememberFor(readWiring);

function addParts(lists: Gathered, source: SourceText, sections: readonly Section[]): void {
  const taken = () => new Set(lists.partsLists.flatMap(({ parts }) => parts.map(({ id }) => id)));
  const add = (read: { list: PartsList; problems: Problem[] } | null) => {
    if (read === null) return;
    if (read.list.parts.length > 0) lists.partsLists.push({ ...read.list, file: source.file });
    lists.problems.push(...read.problems);
  };
  if (sections.length === 0)
    add(partsIn(source, taken()) ?? unread(lists, source, 'parts', 'reference, quantity and description'));
  for (const section of sections) {
    const items = listItemsOf(section, source);
    if (items.length > 0) add(readPartsBullets(source, items, taken()));
    for (const table of tablesOf(section, source)) add(readPartsTable(source, table, taken()));
  }
}

function addTools(lists: Gathered, source: SourceText, sections: readonly Section[]): void {
  const add = (read: { tools: Tool[]; problems: Problem[] } | null) => {
    if (read !== null) lists.tools.push(read.tools);
    lists.problems.push(...(read?.problems ?? []));
  };
  if (sections.length === 0) add(toolsIn(source) ?? unread(lists, source, 'tools', 'name and needed'));
  for (const section of sections) {
    add(readToolBullets(source, listItemsOf(section, source)));
    for (const table of tablesOf(section, source)) add(readToolsTable(source, table));
  }
}

function addWiring(lists: Gathered, source: SourceText, sections: readonly Section[]): void {
  const add = (read: { connections: Connection[]; problems: Problem[] } | null) => {
    if (read !== null) lists.connections.push(read.connections);
    lists.problems.push(...(read?.problems ?? []));
  };
  if (sections.length === 0) add(wiringIn(source) ?? unread(lists, source, 'wiring', 'from and to'));
  for (const section of sections) {
    for (const table of tablesOf(section, source)) add(readWiringTable(source, table));
  }
}

/** Notes that a file does not hold what its role promises. */
function unread(lists: Gathered, source: SourceText, role: RoleName, columns: string): null {
  lists.problems.push({
    place: placeOf(source, spanOfLine(source, 1)),
    message: `${source.file} was expected to list ${role}; no row of it names columns such as ${columns}.`,
    remedy: 'Name the columns in its first row, or correct its role in twicebuilt.yaml.',
  });
  return null;
}

function placesOf(roles: readonly Role[], role: RoleName): readonly string[] {
  return roles.find((entry) => entry.role === role)?.places ?? [];
}

/** The sections that a place means: the one it names, or those of the guide that list the same. */
function sectionsNamed(instructions: Instructions, place: string, source: SourceText): Section[] {
  const named = sectionOfPlace(place);
  return instructions.sections.filter(({ file, id }) => file === source.file && id === named);
}
