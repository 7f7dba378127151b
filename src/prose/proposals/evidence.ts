import type { TextPlace } from '#core/place.ts';
import type { Saying } from './stepTalk.ts';

/** Words of a step that speak for a fact. */
export interface Evidence {
  readonly confidence: number;
  readonly place: TextPlace;
  /** What the words tell, as the end of a sentence. */
  readonly because: string;
  readonly count: number | null;
  readonly kind: Saying['kind'];
}

/** How sure a mention is, after where it stands and what the sentence does. */
export function confidenceOf(fit: number, saying: Saying): number {
  let confidence = fit;
  if (saying.kind === 'heading') confidence += 0.08;
  if (saying.work.length > 0) confidence += 0.05;
  if (saying.isAside && saying.kind !== 'heading') confidence -= saying.work.length > 0 ? 0.1 : 0.2;
  if (saying.isElsewhere) confidence -= 0.3;
  return saying.kind === 'picture' ? Math.min(0.5, confidence - 0.1) : confidence;
}

/** The confidence of several mentions together: the surest, and a little for each that stands by it. */
export function together(evidence: readonly Evidence[]): number {
  const sure = evidence.map(({ confidence }) => confidence).sort((a, b) => b - a);
  const [best = 0, ...others] = sure;
  const more = others.filter((one) => one >= 0.3).length;
  return round(Math.max(0, Math.min(0.97, best + Math.min(0.12, 0.04 * more))));
}

/** The mention that says most. */
export function surest(evidence: readonly Evidence[]): Evidence | undefined {
  return evidence.reduce<Evidence | undefined>(
    (best, one) => (best === undefined || one.confidence > best.confidence ? one : best),
    undefined,
  );
}

function round(n: number): number {
  return Math.round(n * 100) / 100;
}
