import type { FoundHazard } from '#core/hazard.ts';
import { cautionFor, wordingOf } from '#prose/cautions/library.ts';
import type { CautionListing } from '../listCautions.ts';
import { placeDocument } from './placeDocument.ts';

/** JSON output of `cautions`. */
export function cautionsDocument({ hazards, note }: CautionListing): Record<string, unknown> {
  return {
    format: 1,
    hazards: hazards.map(hazardDocument),
    note,
  };
}

function hazardDocument({ hazard, step, places, why, cover, cautions }: FoundHazard): Record<string, unknown> {
  const entry = cautionFor(hazard);
  return {
    hazard,
    name: entry.name,
    grave: entry.grave,
    word: entry.word,
    step,
    places: places.map(placeDocument),
    why,
    cover,
    cautions: cautions.map(({ word, message, when, place }) => ({ word, message, when, place: placeDocument(place) })),
    wording: wordingOf(entry),
    wear: entry.protect?.wear ?? null,
    deferral: entry.defer,
    dated: entry.dated,
    source: entry.source,
  };
}
