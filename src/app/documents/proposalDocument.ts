import { type Proposal, proposalId } from '#core/proposal.ts';
import { placeDocument } from './placeDocument.ts';

/** A proposed fact as JSON output gives it. */
export function proposalDocument(proposal: Proposal): Record<string, unknown> {
  const { step, label, item, about, confidence, places, why, again } = proposal;
  return {
    id: proposalId(proposal),
    step,
    label,
    item,
    about,
    confidence,
    places: places.map(placeDocument),
    why,
    again,
  };
}
