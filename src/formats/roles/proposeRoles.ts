import type { SourceLanguage } from '#core/code.ts';
import type { Path } from '#core/place.ts';
import type { Role, RoleName, RolePlace } from '#core/settings.ts';
import { looksLike, looksLikeLicence } from './fileKind.ts';
import { isBesideTheProduct } from './skipFile.ts';

/** What looking into one file told. Null: not of that sort. */
export interface Candidate {
  readonly path: Path;
  readonly table: {
    readonly kind: 'parts' | 'wiring' | 'tools' | 'other';
    readonly score: number;
    readonly why: string;
  } | null;
  readonly text: {
    readonly kind: 'guide' | 'log' | 'parts' | 'tools' | 'readme' | 'licence' | 'prose';
    readonly score: number;
    readonly why: string;
    readonly sections: readonly { readonly slug: string; readonly role: 'parts' | 'tools' | 'wiring' }[];
  } | null;
  readonly language: SourceLanguage | null;
  readonly isManifest: boolean;
  /** Files of the folder that this text links to, in order. */
  readonly linksTo: readonly Path[];
}

export interface RoleProposal {
  readonly roles: readonly Role[];
  readonly unplaced: readonly { readonly path: Path; readonly why: string }[];
  readonly missing: readonly { readonly role: RoleName; readonly default: string; readonly why: string }[];
}

/** Files that play a role by their name alone, since the tool itself named them. */
const named: Readonly<Record<string, RoleName>> = {
  'twicebuilt.yaml': 'settings',
  'shots.yaml': 'choices',
  'venues.yaml': 'venues',
  'rights.csv': 'rights',
  'contacts.csv': 'people',
  'feedback.md': 'feedback',
  'errata.md': 'errata',
  'history.jsonl': 'history',
};

const wanted: readonly { role: RoleName; default: string; why: string }[] = [
  { role: 'guide', default: 'guide.md', why: 'without instructions nobody can build it' },
  { role: 'parts', default: 'parts.csv', why: 'a builder cannot buy what is not listed' },
  { role: 'tools', default: 'tools.csv', why: 'a builder finds out in the middle of a step which tool is lacking' },
  { role: 'wiring', default: 'wiring.csv', why: 'connections can then be held against code and steps' },
  { role: 'log', default: 'log.md', why: 'mistakes noted at the bench become help for others' },
  { role: 'licences', default: 'LICENSE.txt', why: 'without a licence nobody may build or share it' },
];

/** Which file plays which role, by what is in it. Every file ends up in a role or is said to be unplaced. */
export function proposeRoles(candidates: readonly Candidate[]): RoleProposal {
  const roles = new Map<RoleName, { places: RolePlace[]; why: string[] }>();
  const placed = new Set<Path>();
  const give = (role: RoleName, place: RolePlace, why: string) => {
    const entry = roles.get(role) ?? { places: [], why: [] };
    entry.places.push(place);
    if (!entry.why.includes(why)) entry.why.push(why);
    roles.set(role, entry);
    placed.add(place.split('#')[0] ?? place);
  };

  for (const { path } of candidates) {
    const role = named[path];
    if (role !== undefined) give(role, path, 'by its name');
    else if (/^boards\/[^/]+\.ya?ml$/.test(path)) give('boards', path, 'by its folder');
    else if (looksLikeLicence(path)) give('licences', path, 'by its name');
  }
  placeTables(candidates, give);
  placeTexts(candidates, placed, give);
  placeByName(['guide', 'log'], candidates, roles, give);
  placeSections(candidates, roles, give);
  placeByName(['parts', 'tools', 'wiring'], candidates, roles, give);
  placeFolders(candidates, placed, give);

  return {
    roles: [...roles].map(([role, { places, why }]) => ({ role, places, why: why.join('; ') })),
    unplaced: candidates
      .filter(({ path }) => !isPlaced(path, placed))
      .map(({ path }) => ({ path, why: whyUnplaced(path) })),
    missing: wanted.filter(({ role }) => !roles.has(role)),
  };
}

type Give = (role: RoleName, place: RolePlace, why: string) => void;

function placeTables(candidates: readonly Candidate[], give: Give): void {
  for (const { path, table } of candidates) {
    if (table === null || table.kind === 'other' || named[path] !== undefined) continue;
    give(table.kind, path, table.why);
  }
}

function placeTexts(candidates: readonly Candidate[], placed: ReadonlySet<Path>, give: Give): void {
  const texts = candidates.filter(({ path, text }) => text !== null && !placed.has(path) && !isBesideTheProduct(path));
  const best = texts
    .filter(({ text }) => text?.kind === 'guide')
    .sort((a, b) => (b.text?.score ?? 0) - (a.text?.score ?? 0) || compare(a.path, b.path))[0];
  if (best !== undefined) {
    for (const { path, text } of family(best, texts)) {
      give('guide', path, path === best.path ? (text?.why ?? '') : 'belongs to the same set of linked pages');
    }
  }
  for (const { path, text } of texts) {
    if (text?.kind === 'log') give('log', path, text.why);
  }
}

/** A file that has the very name proposed for a role plays it, even where too little of it could be read so far. */
function placeByName(
  names: readonly RoleName[],
  candidates: readonly Candidate[],
  roles: ReadonlyMap<RoleName, unknown>,
  give: Give,
): void {
  for (const { role, default: name } of wanted) {
    if (!names.includes(role) || roles.has(role)) continue;
    if (candidates.some(({ path }) => path === name)) give(role, name, 'by its name');
  }
}

/** The pages that form one guide: those linked with the best one, directly or through an index, in reading order. */
function family(best: Candidate, texts: readonly Candidate[]): Candidate[] {
  const pages = new Map(
    texts.filter(({ text }) => text?.kind !== 'log' && text?.kind !== 'licence').map((text) => [text.path, text]),
  );
  const index = [...pages.values()].find(
    ({ path, linksTo }) => path !== best.path && linksTo.includes(best.path) && best.linksTo.includes(path),
  );
  if (index === undefined) return pagesBeside(best, [...pages.values()]);
  const linked = index.linksTo
    .filter((path, at) => index.linksTo.indexOf(path) === at && path !== index.path)
    .map((path) => pages.get(path));
  const members = linked.filter((page): page is Candidate => page?.linksTo.includes(index.path) ?? false);
  return [index, ...members];
}

/** Pages of a folder that is named for a guide, or that are numbered like the best one, form one guide. */
function pagesBeside(best: Candidate, pages: readonly Candidate[]): Candidate[] {
  const folder = best.path.slice(0, best.path.lastIndexOf('/') + 1);
  const beside = pages.filter(({ path }) => path.startsWith(folder) && !path.slice(folder.length).includes('/'));
  const isNumbered = ({ path }: Candidate) => /^\d/.test(path.slice(folder.length));
  if (/(?:^|\/)(?:guide|instructions|manual|steps|anleitung)\/$/i.test(folder)) return beside.toSorted(inOrder);
  return isNumbered(best) ? beside.filter(isNumbered).toSorted(inOrder) : [best];
}

function inOrder(a: Candidate, b: Candidate): number {
  return a.path.localeCompare(b.path, 'en', { numeric: true });
}

/** A list that is no file of its own may be a section of the guide. */
function placeSections(
  candidates: readonly Candidate[],
  roles: ReadonlyMap<RoleName, { places: string[] }>,
  give: Give,
): void {
  const guide = new Set(roles.get('guide')?.places ?? []);
  for (const role of ['parts', 'tools', 'wiring'] as const) {
    if (roles.has(role)) continue;
    for (const { path, text } of candidates) {
      if (!guide.has(path)) continue;
      for (const section of text?.sections ?? []) {
        if (section.role === role) give(role, `${path}#${section.slug}`, `a section of the guide that lists ${role}`);
      }
    }
  }
}

function placeFolders(candidates: readonly Candidate[], placed: ReadonlySet<Path>, give: Give): void {
  const free = candidates.filter(({ path }) => !placed.has(path));
  const code = free.filter(
    ({ path, language, isManifest }) => (language !== null || isManifest) && !isBesideTheProduct(path),
  );
  for (const folder of topFolders(code.map(({ path }) => path))) give('code', folder, 'holds source files');
  const shots = free.filter(({ path }) => looksLike('picture', path) || looksLike('clip', path));
  for (const folder of topFolders(shots.map(({ path }) => path))) give('shots', folder, 'holds pictures or clips');
  const design = free.filter(({ path }) => looksLike('design', path));
  for (const folder of topFolders(design.map(({ path }) => path))) give('design', folder, 'holds design files');
}

/** The folders that hold the files, without those inside another; './' for the root, whose files are then named singly. */
function topFolders(paths: readonly Path[]): RolePlace[] {
  const atRoot = paths.filter((path) => !path.includes('/'));
  const folders = [
    ...new Set(paths.filter((path) => path.includes('/')).map((path) => path.slice(0, path.lastIndexOf('/') + 1))),
  ].sort(compare);
  return [
    ...folders.filter((folder) => !folders.some((other) => other !== folder && folder.startsWith(other))),
    ...atRoot,
  ];
}

function isPlaced(path: Path, placed: ReadonlySet<string>): boolean {
  if (placed.has(path)) return true;
  for (let at = path.lastIndexOf('/'); at > 0; at = path.lastIndexOf('/', at - 1)) {
    if (placed.has(path.slice(0, at + 1))) return true;
  }
  return false;
}

function whyUnplaced(path: Path): string {
  if (looksLike('binaryTable', path)) return 'a spreadsheet in a binary form; save it as CSV so that it can be read';
  if (isBesideTheProduct(path)) return 'lies with tests, examples or old copies';
  if (looksLike('prose', path)) return 'text that is neither guide nor log';
  if (looksLike('table', path)) return 'a table that lists neither parts, wiring nor tools';
  return 'nothing in it tells what it is for';
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
