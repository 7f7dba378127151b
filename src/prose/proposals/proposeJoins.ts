import type { Claim } from '#core/claim.ts';
import { connectionId, endpointId } from '#core/connection.ts';
import type { PinMention } from '#core/facts.ts';
import type { Proposal } from '#core/proposal.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import type { KnownThings } from '../knownThings.ts';

/** Connections of which a step's prose names both ends, where no step declares them. */
export function proposeJoins(
  pins: readonly Claim<PinMention>[],
  known: KnownThings,
  steps: Readonly<Record<StepId, StepFacts>>,
): Proposal[] {
  const declared = new Set(Object.values(steps).flatMap(({ connects }) => connects.map(({ value }) => value.id)));
  const proposals = new Map<string, Proposal>();
  for (const { value, places, confidence } of pins) {
    const { end, other, step } = value;
    const place = places[0];
    if (other === null || step === null || place === undefined) continue;
    const id = connectionId(end, other);
    const key = `${step} ${id}`;
    const before = proposals.get(key);
    if (declared.has(id)) continue;
    if (before !== undefined) {
      proposals.set(key, { ...before, places: [...before.places, place] });
      continue;
    }
    const isWired = known.connections.has(id);
    const from = known.connections.get(id)?.from ?? end;
    const to = known.connections.get(id)?.to ?? other;
    proposals.set(key, {
      step,
      label: 'connects',
      item: `${from.ref}.${from.pin} – ${to.ref}.${to.pin}`,
      about: isWired ? `connection:${id}` : null,
      basis: 'read',
      confidence: Math.round(Math.min(0.95, confidence + (isWired ? 0.1 : -0.15)) * 100) / 100,
      places: [place],
      why: `${endpointId(end)} and ${endpointId(other)} are joined here${isWired ? ', and the wiring has this connection' : ', though the wiring does not have this connection'}.`,
      again: false,
    });
  }
  return [...proposals.values()];
}
