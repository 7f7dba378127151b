import type { Part } from '#core/part.ts';
import { hasPlaceholder } from './placeholders.ts';

// 'Insert here' may stand in a guide for a battery; in a list of parts it stands for the parts.
const standIn = /^(?:please )?(?:insert|add|put|list|fill in)\b.*\b(?:here|later|below)\W*$/i;

/** Whether a row of a parts list names a part, and is no stand-in for rows to come. */
export function isRealPart(part: Part): boolean {
  if (part.refs.length > 0) return true;
  return /\p{L}/u.test(part.description) && !hasPlaceholder(part.description) && !standIn.test(part.description);
}
