import { comparePinsOn } from '#checks/comparePinsOn.ts';
import type { Judged } from '#core/assembled.ts';
import { type Connection, connectionId, type Endpoint, endpointId } from '#core/connection.ts';
import type { Key } from '#core/key.ts';
import type { PartId, Ref } from '#core/part.ts';
import type { Place, TextPlace } from '#core/place.ts';
import { isJoin, type Section, type StepFacts } from '#core/step.ts';
import type { PictureRef } from '#core/text.ts';
import type { LateChange } from './changesOf.ts';

export const dependentKinds = ['step', 'text', 'caption', 'picture', 'wiring', 'code'] as const;

export type DependentKind = (typeof dependentKinds)[number];

/** Something that speaks of a fact, or shows it, and may be older than its last change. */
export interface Dependent {
  readonly kind: DependentKind;
  /** What it is in the history; null for what the history does not follow. */
  readonly key: Key | null;
  readonly place: Place;
  /** What ties it to the fact, as a sentence. */
  readonly why: string;
  /** ISO 8601 local date and time at which a picture was taken. */
  readonly takenAt: string | null;
}

/** Everything in the build that depends on a changed fact. Pictures only where they were taken before the change. */
export function dependentsOf({ key, at }: LateChange, judged: Judged): Dependent[] {
  const [subject = '', ...rest] = key.split(':');
  const name = rest.join(':');
  switch (subject) {
    case 'part':
      return dependentsOfPart(name, at, judged);
    case 'connection':
      return dependentsOfConnection(name, at, judged);
    case 'step':
      return dependentsOfStep(name, at, judged);
    case 'code':
      return dependentsOfCode(name, judged);
    default:
      return [];
  }
}

function dependentsOfPart(id: PartId, at: string, judged: Judged): Dependent[] {
  const { build, facts } = judged;
  const refs = build.parts.find((part) => part.id === id)?.refs ?? (/\d$/.test(id) ? [id] : []);
  const names =
    refs.length === 0 ? null : new RegExp(`(?<![\\p{L}\\p{N}])(?:${refs.join('|')})(?![\\p{L}\\p{N}])`, 'u');
  const speaks = (section: Section) =>
    (names?.test(wordsOf(section, judged)) ?? false) || takesUp(facts.steps[section.id], id, refs);
  const sections = build.instructions.sections.filter(speaks);
  const what = refs.length === 0 ? id : refs.join(', ');
  return [
    ...sections.map((section) => sectionDependent(section, `It speaks of ${what}.`)),
    ...sections.flatMap((section) => picturesOf(section, at, judged, names)),
    ...build.connections
      .filter(({ from, to }) => refs.includes(from.ref) || refs.includes(to.ref))
      .map((row) => rowDependent(row, `It wires ${what}.`)),
    ...codeDependents(judged, ({ ref }) => refs.includes(ref), `It drives pins of ${what}.`),
  ];
}

function dependentsOfConnection(id: string, at: string, judged: Judged): Dependent[] {
  const { build, facts } = judged;
  const row = build.connections.find((one) => connectionId(one.from, one.to) === id);
  const ends = row === undefined ? id.split('~') : [endpointId(row.from), endpointId(row.to)];
  const speaks = ({ id: step }: Section) => {
    const own = facts.steps[step];
    if (own === undefined) return false;
    const joins = [...own.connects.map(({ value }) => value), ...own.removes.map(({ value }) => value).filter(isJoin)];
    const probed = own.measures.flatMap(({ value }) => value.between.map((end) => end.toUpperCase()));
    return joins.some((join) => join.id === id || join.connection === id) || probed.some((end) => ends.includes(end));
  };
  const sections = build.instructions.sections.filter(speaks);
  const what = ends.join(' – ');
  const isEnd = (end: Endpoint) => {
    const board = build.parts.find(({ refs }) => refs.includes(end.ref))?.description ?? '';
    return [row?.from, row?.to].some(
      (one) => one !== undefined && one.ref === end.ref && comparePinsOn(board, one.pin, end.pin) === 'same',
    );
  };
  return [
    ...sections.map((section) => sectionDependent(section, `It makes or measures ${what}.`)),
    ...sections.flatMap((section) => picturesOf(section, at, judged, null)),
    ...codeDependents(judged, isEnd, `It drives one end of ${what}.`),
  ];
}

function dependentsOfStep(id: string, at: string, judged: Judged): Dependent[] {
  const { build, facts } = judged;
  const section = build.instructions.sections.find((one) => one.id === id);
  if (section === undefined) return [];
  const makes = new Set(facts.steps[id]?.makes.map(({ value }) => value.toLowerCase()));
  const users = build.instructions.sections.filter(
    (one) => one.id !== id && facts.steps[one.id]?.uses.some(({ value }) => makes.has(value.named.toLowerCase())),
  );
  return [
    ...users.map((one) => sectionDependent(one, `It uses what ‘${section.heading}’ makes.`)),
    ...picturesOf(section, at, judged, null),
  ];
}

function dependentsOfCode(file: string, { build, facts }: Judged): Dependent[] {
  const loads = ({ id }: Section) =>
    facts.steps[id]?.loads.some(({ value: { path } }) => path === file || file.startsWith(`${path}/`)) ?? false;
  return build.instructions.sections.filter(loads).map((section) => sectionDependent(section, `It loads ${file}.`));
}

function takesUp(step: StepFacts | undefined, id: PartId, refs: readonly Ref[]): boolean {
  if (step === undefined) return false;
  const removed = step.removes.flatMap(({ value }) => (isJoin(value) ? [] : [value]));
  const uses = [...step.uses.map(({ value }) => value), ...removed];
  const ends = step.connects.flatMap(({ value }) => [value.from.ref, value.to.ref]);
  return uses.some(({ part }) => part === id) || ends.some((ref) => refs.includes(ref));
}

function sectionDependent(section: Section, why: string): Dependent {
  const isStep = section.role === 'step';
  return {
    kind: isStep ? 'step' : 'text',
    key: isStep ? `step:${section.id}` : null,
    place: section.place,
    why,
    takenAt: null,
  };
}

/** Captions that name the thing, and pictures of the section that were taken before the change. */
function picturesOf(section: Section, at: string, { build }: Judged, names: RegExp | null): Dependent[] {
  return section.pictures.flatMap((picture) => {
    const takenAt = build.shots.find(({ path }) => path === picture.path)?.takenAt ?? null;
    const caption = names?.test(`${picture.alt} ${picture.title ?? ''}`) ? [captionDependent(picture)] : [];
    if (takenAt === null || takenAt.slice(0, 10) >= at.slice(0, 10)) return caption;
    const shown: Dependent = {
      kind: 'picture',
      key: picture.path === null ? null : `shot:${picture.path}`,
      place: picture.place,
      why: `It was taken on ${takenAt.slice(0, 10)}, before the change, and may show the old state.`,
      takenAt,
    };
    return [...caption, shown];
  });
}

function captionDependent(picture: PictureRef): Dependent {
  return { kind: 'caption', key: null, place: picture.place, why: 'Its words name it.', takenAt: null };
}

function rowDependent(row: Connection, why: string): Dependent {
  return { kind: 'wiring', key: `connection:${connectionId(row.from, row.to)}`, place: row.place, why, takenAt: null };
}

/** One dependent for each file that drives a pin of interest, at the first of them. */
function codeDependents({ facts }: Judged, isMeant: (end: Endpoint) => boolean, why: string): Dependent[] {
  const first = new Map<string, TextPlace>();
  for (const pin of facts.drivenPins) {
    if (isMeant({ ref: pin.ref, pin: pin.pin }) && !first.has(pin.place.file)) first.set(pin.place.file, pin.place);
  }
  return [...first].map(([file, place]) => ({ kind: 'code', key: `code:${file}`, place, why, takenAt: null }));
}

/** Everything that stands under a heading, pictures' words apart. */
function wordsOf(section: Section, { build }: Judged): string {
  const source = build.texts.get(section.file);
  const blocks = section.blocks.map(({ place }) => source?.text.slice(...place.span) ?? place.quote);
  return [section.heading, ...section.facts.map(({ value }) => value), ...blocks]
    .join('\n')
    .replace(/!\[[^\]]*\]\([^)]*\)/g, '');
}
