import { actionsOfStep } from './actionsOfStep.ts';
import type { Bench } from './bench.ts';
import type { ScriptStep } from './script.ts';

/** Lays the work as the step declares it. A side that changes although nobody speaks of turning slows the builder. */
export function turnSide(bench: Bench, step: ScriptStep): void {
  const claim = step.facts.side;
  if (claim === null) return;
  const [before, now] = [bench.side, claim.value];
  bench.side = { name: now, step: step.id };
  if (before === null || !isOtherSide(before.name, now)) return;
  if (!worksOnPoints(bench, step) || speaksOfTurning(bench, step)) return;
  const { name: from, step: since } = before;
  bench.stops.push({ kind: 'side-changes-untold', step: step.id, claim, from, to: now, since });
}

const under = /\b(?:under\s?side|bottom|back|rear|reverse|solder side|copper side|below)\b/i;
const upper = /\b(?:top|upper|front|component side|face)\b/i;

/** The top of a thing and the underside of the same thing. */
function isOtherSide(a: string, b: string): boolean {
  const turned = (under.test(a) && upper.test(b)) || (upper.test(a) && under.test(b));
  const isBoth = [a, b].some((side) => under.test(side) && upper.test(side));
  return turned && !isBoth && thingOf(a) === thingOf(b);
}

/** What the side is a side of: 'back of the ring' is one of the ring. */
function thingOf(side: string): string {
  return side
    .toLowerCase()
    .replace(
      /\b(?:side|underside|under|bottom|back|rear|reverse|solder|copper|below|top|upper|front|component|face|of|the|board|pcb)\b/g,
      '',
    )
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** Holes and pads change places when the work is turned; a lid or a seam is found either way. */
function worksOnPoints({ facts }: Bench, step: ScriptStep): boolean {
  if (step.facts.connects.length > 0) return true;
  return actionsOfStep(facts, step.id).some(({ kind, told }) => kind === 'solder' && told === 'do');
}

/** A guide that speaks of turning over anywhere is followed; so is a step that names its side in its words. */
function speaksOfTurning({ build, facts }: Bench, step: ScriptStep): boolean {
  if (facts.actions.some(({ kind }) => kind === 'turn-over')) return true;
  const section = build.instructions.sections.find(({ id }) => id === step.id);
  const words = [section?.heading ?? '', ...(section?.blocks.map(({ place }) => place.quote) ?? [])].join('\n');
  return /\b(?:turn|flip|rotate|roll)(?:ed|ing|s)?\b|\bunder|\bupside\b|\bbelow\b|\bbeneath\b|\bback\b|\bbottom\b|\breverse\b|\bside\b|\btop\b|\bfront\b/i.test(
    words,
  );
}
