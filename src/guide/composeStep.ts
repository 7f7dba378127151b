import type { Claim } from '#core/claim.ts';
import { endpointId } from '#core/connection.ts';
import type { LogNote } from '#core/log.ts';
import type { Place } from '#core/place.ts';
import type { QuantityKind } from '#core/quantity.ts';
import { type Hazard, isJoin, type Join, type PartUse, type Section, type StepFacts } from '#core/step.ts';
import { findQuantities } from '#notation/value.ts';
import { composeBody, type Drafting } from './composeBody.ts';
import { composeNeeds, type Inventory } from './composeNeeds.ts';
import type {
  BodyBlock,
  CautionBlock,
  ErratumBlock,
  ExpectBlock,
  MeasureBlock,
  Minutes,
  MistakeBlock,
  StepBlock,
  StepJoin,
  StepMark,
  WiringRow,
} from './guide.ts';
import { stated } from './stepMarks.ts';

/** What one step is composed from. */
export interface StepSources {
  readonly section: Section;
  readonly facts: StepFacts;
  readonly mark: StepMark;
  readonly level: number;
  readonly after: Minutes | null;
  /** Whether the rehearsal comes to this step with the power on. */
  readonly comesPowered: boolean;
  /** Notes of the log that speak of this step. */
  readonly notes: readonly LogNote[];
  readonly errata: readonly ErratumBlock[];
  readonly words: StepBlock['words'];
  readonly inventory: Inventory & { readonly wiring: readonly WiringRow[] };
  readonly drafting: Drafting;
}

export function composeStep(sources: StepSources): StepBlock {
  const { section, facts, mark, drafting } = sources;
  const pictureOf = `Picture to step ${mark.number}, ${section.heading}`;
  const body = composeBody(section.blocks, { parent: mark.block, pictureOf }, drafting);
  const measures = composeMeasures(sources);
  return {
    kind: 'step',
    id: mark.block,
    places: [section.place],
    step: section.id,
    number: mark.number,
    heading: section.heading,
    level: sources.level,
    needs: composeNeeds(facts, sources.inventory),
    minutes: minutesOf(facts),
    after: sources.after,
    powered: isPowered(sources),
    side: statedText(facts.side),
    optional: statedText(facts.optional),
    variant: statedText(facts.variant),
    irreversible: statedText(facts.irreversible),
    makes: stated(facts.makes).map((claim) => claim.value),
    removes: stated(facts.removes).map((claim) => removedText(claim.value)),
    joins: stated(facts.connects).map((claim) => composeJoin(claim.value, sources.inventory.wiring)),
    cautions: composeCautions(stated(facts.hazards), body, sources),
    beforePower: measures.filter((measure) => isBeforePower(measure, facts)),
    body,
    checks: composeChecks(measures, sources),
    mistakes: composeMistakes(sources),
    errata: sources.errata,
    words: sources.words,
  };
}

/** Minutes that the step declares; null where it does not. */
export function minutesOf(facts: StepFacts): Minutes | null {
  return facts.minutes && stated([facts.minutes]).length > 0 ? facts.minutes.value : null;
}

function isPowered({ facts, comesPowered }: StepSources): boolean {
  const power = facts.power && stated([facts.power])[0];
  return power ? power.value.during === 'on' : comesPowered;
}

function statedText(claim: Claim<string> | null): string | null {
  return claim && stated([claim]).length > 0 ? claim.value : null;
}

function removedText(removed: Join | PartUse): string {
  return isJoin(removed) ? `${endpointId(removed.from)} – ${endpointId(removed.to)}` : removed.named;
}

function composeJoin(join: Join, wiring: readonly WiringRow[]): StepJoin {
  const row = join.connection === null ? undefined : wiring.find((candidate) => isRowOf(candidate, join));
  return {
    from: join.from,
    to: join.to,
    row: row?.id ?? null,
    colour: row?.colour ?? null,
    length: row?.length ?? null,
  };
}

function isRowOf(row: WiringRow, join: Join): boolean {
  const ends = (a: { from: Join['from']; to: Join['to'] }) => [endpointId(a.from), endpointId(a.to)].sort().join('~');
  return ends(row) === join.connection || ends(row) === ends(join);
}

/** A caution that the text already gives in a quotation is not given twice. */
function composeCautions(
  hazards: readonly Claim<Hazard>[],
  body: readonly BodyBlock[],
  of: StepSources,
): CautionBlock[] {
  const said = new Set(body.flatMap((block) => (block.kind === 'caution' ? [squeezed(block.message)] : [])));
  return hazards
    .filter((hazard) => !said.has(squeezed(hazard.value.message)))
    .map(({ value, places }) => ({ kind: 'caution', ...told(of, 'caution', value, places), ...value }));
}

function composeMeasures(of: StepSources): MeasureBlock[] {
  return stated(of.facts.measures).map(({ value, places }) => ({
    kind: 'measure',
    ...told(of, 'measure', value, places),
    ...value,
  }));
}

/**
 * Where a step ends by switching the power on, what is read without power must be read before that, or a short
 * meets the supply first. Volts and amperes are only there afterwards.
 */
function isBeforePower(measure: MeasureBlock, { power }: StepFacts): boolean {
  const switched = power && stated([power]).some(({ value }) => value.during === 'off' && value.after === 'on');
  const live = findQuantities(measure.expect).some(({ quantity }) => livingKinds.has(quantity.kind));
  return switched === true && !live;
}

const livingKinds = new Set<QuantityKind>(['voltage', 'current', 'power', 'frequency']);

function composeChecks(measures: readonly MeasureBlock[], of: StepSources): (MeasureBlock | ExpectBlock)[] {
  const after = measures.filter((measure) => !isBeforePower(measure, of.facts));
  const expects = stated(of.facts.expects).map(
    ({ value, places }): ExpectBlock => ({ kind: 'expect', ...told(of, 'expect', value, places), text: value }),
  );
  return [...after, ...expects].sort((a, b) => offsetOf(a) - offsetOf(b));
}

function offsetOf(block: MeasureBlock | ExpectBlock): number {
  const place = block.places[0];
  return place?.kind === 'text' ? place.span[0] : 0;
}

function composeMistakes(of: StepSources): MistakeBlock[] {
  return of.notes.flatMap((note) =>
    note.mistake === null
      ? []
      : [
          {
            kind: 'mistake',
            ...told(of, 'mistake', note.mistake, [note.place]),
            at: note.at,
            mistake: note.mistake,
            cause: note.cause,
            remedy: note.remedy,
            reading: note.reading,
          },
        ],
  );
}

function told(of: StepSources, kind: string, content: unknown, places: readonly Place[]) {
  return { id: of.drafting.names.within(of.mark.block, kind, content), places };
}

function squeezed(text: string): string {
  return text.replace(/\s+/g, ' ').trim().toLowerCase();
}
