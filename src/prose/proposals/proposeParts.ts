import type { Build } from '#core/build.ts';
import { firstValue } from '#core/claim.ts';
import type { Part, PartId, Ref } from '#core/part.ts';
import type { Proposal } from '#core/proposal.ts';
import { rememberFor } from '#core/remember.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import { refClass } from '#notation/refs.ts';
import type { KnownThings } from '../knownThings.ts';
import { refGroups } from '../mentions/refGroups.ts';
import { confidenceOf, type Evidence, surest, together } from './evidence.ts';
import { findNamed } from './findNamed.ts';
import { type Called, type KnownNames, knownNames } from './knownNames.ts';
import type { Saying } from './stepTalk.ts';
import trade from './tradeWords.json';
import { writtenPart } from './writtenItem.ts';

interface Told {
  readonly part: Part;
  readonly evidence: Evidence[];
  readonly refs: Set<Ref>;
}

/** The parts that each step speaks of, without those that it declares. */
export function proposeParts(
  build: Build,
  known: KnownThings,
  { steps, readsWords }: { readonly steps: Readonly<Record<StepId, StepFacts>>; readonly readsWords: boolean },
  talk: ReadonlyMap<StepId, readonly Saying[]>,
): Proposal[] {
  const names = readsWords ? namesOfFitted(build.parts) : knownNames<Part>([], calledOf);
  const taken = new Map<PartId, number>();
  const isDeclared = new Set(Object.values(steps).flatMap(({ uses }) => uses.flatMap(({ value }) => value.part ?? [])));
  const proposals: Proposal[] = [];
  for (const [step, sayings] of talk) {
    const declaresParts = (steps[step]?.uses.length ?? 0) > 0;
    for (const told of partsIn(sayings, names, known).values()) {
      // Who declares the parts of a step has said which; only a part that no step declares may have been forgotten.
      if (declaresParts && isDeclared.has(told.part.id)) continue;
      if (steps[step]?.uses.some(({ value }) => value.part === told.part.id)) continue;
      const proposal = proposalOf(step, told, isDeclared.has(told.part.id), taken, known);
      if (proposal !== null) proposals.push(proposal);
    }
  }
  return proposals;
}

const namesOfFitted = rememberFor((parts: readonly Part[]) =>
  knownNames(
    parts.filter(({ fitted }) => fitted),
    calledOf,
  ),
);

function partsIn(sayings: readonly Saying[], names: KnownNames<Part>, known: KnownThings): Map<PartId, Told> {
  const byPart = new Map<PartId, Told>();
  const note = (part: Part, ref: Ref | null, evidence: Evidence) => {
    const told = byPart.get(part.id) ?? { part, evidence: [], refs: new Set<Ref>() };
    told.evidence.push(evidence);
    if (ref !== null) told.refs.add(ref);
    byPart.set(part.id, told);
  };
  for (const saying of sayings) {
    const { text, kind } = saying;
    const groups = refGroups(text, known);
    for (const { refs, start, end } of groups) {
      for (const ref of refs) {
        const part = known.partOfRef.get(ref);
        if (part === undefined || !part.fitted) continue;
        const place = saying.placeOf(start, end);
        const because = `the parts list has ${ref}`;
        note(part, ref, { confidence: confidenceOf(0.86, saying), place, because, count: null, kind });
      }
    }
    for (const named of findNamed(text, names, (from) => saying.isWork(from))) {
      if (groups.some(({ start, end }) => named.from < end && start < named.to)) continue;
      const confidence = confidenceOf(named.fit, saying);
      if (confidence < 0.2) continue;
      const place = saying.placeOf(named.from, named.to);
      note(named.thing, null, { confidence, place, because: named.because, count: named.count, kind });
    }
  }
  return byPart;
}

function proposalOf(
  step: StepId,
  { part, evidence, refs }: Told,
  isDeclared: boolean,
  taken: Map<PartId, number>,
  known: KnownThings,
): Proposal | null {
  const confidence = together(evidence);
  const best = surest(evidence);
  if (best === undefined || confidence < 0.3) return null;
  const stock = stockOf(part);
  const used = taken.get(part.id) ?? 0;
  const named = refs.size > 0 ? part.refs.filter((ref) => refs.has(ref)) : part.refs;
  const again = isDeclared || (part.refs.length === 0 && stock !== null && stock > 1 && used >= stock);
  const count = part.refs.length > 0 || stock === null ? null : amountFor(stock - used, stock, evidence);
  const item = writtenPart(part, named, count, known);
  if (item === null) return null;
  if (confidence >= 0.5) taken.set(part.id, used + (count ?? 1));
  return {
    step,
    label: 'parts',
    item,
    about: `part:${part.id}`,
    basis: 'read',
    confidence,
    places: [best.place, ...evidence.filter((one) => one !== best).map(({ place }) => place)],
    why: `“${best.place.quote.replace(/\s+/g, ' ')}” ${best.kind === 'heading' ? 'stands in the heading' : 'is said here'}, and ${best.because}.`,
    again,
  };
}

/** How many a step takes: as it says, else all that are left. */
function amountFor(left: number, stock: number, evidence: readonly Evidence[]): number {
  if (left <= 0) return 1;
  const said = evidence.flatMap(({ count }) => count ?? []).reduce((most, n) => Math.max(most, n), 0);
  const isPlural = evidence.some(({ count }) => count === null);
  const wanted = said > 1 ? said : stock > 1 && isPlural ? left : said === 1 && stock > 1 ? left : 1;
  return Math.max(1, Math.min(wanted, left));
}

/** Pieces of a part; null where it is listed by length or not counted. */
function stockOf(part: Part): number | null {
  const amount = firstValue(part.amount);
  if (amount === undefined || amount.unit !== 'pcs' || !Number.isInteger(amount.n)) return null;
  return amount.n;
}

function calledOf(part: Part): Called {
  const value = part.value.is === 'unknown' ? [] : [part.value.claims[0].value.text];
  const kinds: Readonly<Record<string, readonly string[]>> = trade.ofClass;
  const [ref] = part.refs;
  const kind = ref === undefined ? [] : (kinds[refClass(ref) ?? ''] ?? []);
  const more = [...value, part.package ?? '', part.mpn ?? ''].filter((text) => text !== '');
  return { name: part.description, more, kind, count: stockOf(part) };
}
