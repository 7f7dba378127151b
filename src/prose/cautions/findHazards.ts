import type { Action } from '#core/action.ts';
import type { Build } from '#core/build.ts';
import type { FoundHazard, HazardId } from '#core/hazard.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import { coverOf } from './coverOf.ts';
import { type HeardGuide, hearGuide } from './hearGuide.ts';
import { type LibraryCaution, library } from './library.ts';
import { readingPlaceOf } from './readingPlace.ts';
import { type Scene, type Sighting, sightingsOf } from './sightings.ts';
import { sums } from './sums.ts';

/**
 * The hazards of the library that a build brings with it, each with where it first bites and what warns of it. Where
 * the guide's words cannot be read, only grave ones that lists and declared facts hold, and no word on their cover.
 */
export function findHazards(
  build: Build,
  steps: Readonly<Record<StepId, StepFacts>>,
  actions: readonly Action[],
  readsWords: boolean,
): FoundHazard[] {
  const heard = readsWords ? hearGuide(build) : nothingHeard;
  const scene: Scene = { build, steps, actions, sentences: heard.sentences };
  const found: FoundHazard[] = [];
  const known = new Set<HazardId>();
  for (const entry of library
    .filter(({ grave }) => readsWords || grave)
    .sort((a, b) => a.onlyWith.length - b.onlyWith.length)) {
    if (entry.onlyWith.length > 0 && !entry.onlyWith.some((id) => known.has(id))) continue;
    if (entry.isPartOf.some((id) => known.has(id))) continue;
    const sightings = [...(sums[entry.triggers.computed ?? '']?.(scene) ?? []), ...sightingsOf(entry, scene)];
    const first = firstBite(entry, sightings, build);
    if (first === null) continue;
    known.add(entry.id);
    const rest = sightings.filter((one) => one !== first).map(({ place }) => place);
    found.push({
      hazard: entry.id,
      step: first.step,
      places: [first.place, ...rest],
      basis: first.as === 'list' ? first.basis : basisOf(sightings, first),
      why: first.why,
      ...(readsWords ? coverOf(entry, first, sightings, heard, scene) : { cover: 'cannot-tell', cautions: [] }),
    });
  }
  return found;
}

const nothingHeard: HeardGuide = { sentences: [], marked: [] };

/**
 * Where a hazard first meets the builder: the first step that takes it up or does it, else words outside the steps,
 * else the list, where the thing itself is the hazard. Null where nothing shows that the builder meets it.
 */
function firstBite(entry: LibraryCaution, sightings: readonly Sighting[], build: Build): Sighting | null {
  const listed = sightings.filter(({ as }) => as === 'list');
  const acts = sightings.filter(({ as }) => as === 'act' || as === 'head');
  // What is only spoken of counts where a list has the thing for it.
  const mentions = listed.length === 0 ? [] : sightings.filter(({ as }) => as === 'mention');
  const order = [acts.filter(inStep), mentions.filter(inStep), acts, entry.inItself ? listed : []];
  const bites = order.find((some) => some.length > 0);
  if (bites === undefined) return null;
  return bites.reduce((first, next) => (isEarlier(next, first, build) ? next : first));
}

function inStep({ step }: Sighting): boolean {
  return step !== null;
}

function isEarlier(a: Sighting, b: Sighting, build: Build): boolean {
  const [first, then] = [a, b].map(({ place }) => (place.kind === 'text' ? readingPlaceOf(build, place) : null));
  if (first == null || then == null) return then == null && first != null;
  if (first.section !== then.section) return first.section < then.section;
  // Of one step, the words that tell the act say best where it comes.
  if (a.as !== b.as) return a.as === 'act';
  return first.at < then.at;
}

/** A thing that a list or a step declares is certain, wherever words speak of it first. */
function basisOf(sightings: readonly Sighting[], first: Sighting): FoundHazard['basis'] {
  const isDeclared = sightings.some(({ basis, as }) => basis === 'declared' && (as === 'list' || as === 'head'));
  return isDeclared ? 'declared' : first.basis;
}
