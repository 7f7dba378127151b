import type { Build } from '#core/build.ts';
import type { Facts } from '#core/facts.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import { sentencesOf } from '../mentions/sentencesOf.ts';
import { spokenTexts } from '../mentions/spokenTexts.ts';
import { placeInside } from '../placeInside.ts';

const leaves =
  /\b(?:let|leave|allow|wait for|wait until|give)\b[^.]{0,60}?\b(?:dry|drying|cure|curing|set|harden|charge|charging)\b(?!\s+(?:it|the|up|aside|down|apart))/i;
const refuses = /\b(?:do not|don['’]t|never|not)\s+(?:let|leave|allow|wait)\b/i;
/** A time in any words, a sign that tells when it is done, or where the time is told. */
const tellsWhen =
  /\d\s*(?:s|sec|seconds?|min|mins|minutes?|h|hrs?|hours?|days?)\b|\b(?:overnight|an hour|a minute|half an hour|a day|one (?:minute|hour|day|night)|two|three|five|ten|twelve|twenty(?:-four)?|minutes|hours|days|until|till|instructions?|label|package|packaging|packet|tube|bottle|manufacturer|data ?sheet|maker|tacky|no longer|turns? (?:green|off)|(?:led|light) (?:is|goes|turns|changes))\b/i;

/** Something is left to dry, cure or charge, and its step tells neither a time nor a sign. */
export function findOpenWaits(build: Build, steps: Readonly<Record<StepId, StepFacts>>): Facts['openWaits'] {
  const texts = spokenTexts(build);
  const found = texts.flatMap((spoken) => {
    const { step } = spoken;
    const wait = step === null ? 0 : (steps[step]?.minutes?.value.wait ?? 0);
    if (step === null || wait > 0) return [];
    if (texts.some((other) => other.step === step && tellsWhen.test(other.words))) return [];
    return sentencesOf(spoken.words).flatMap(({ text, start }) => {
      const match = leaves.exec(text);
      if (match === null || refuses.test(text)) return [];
      const place = placeInside(spoken.place, start + match.index, start + match.index + match[0].length);
      return [{ step, what: place.quote, place }];
    });
  });
  return found.filter(({ step }, at) => found.findIndex((one) => one.step === step) === at);
}
