import type { Build } from '#core/build.ts';
import type { Facts } from '#core/facts.ts';
import { actionsIn } from '../actions/findActions.ts';
import { sentencesOf } from '../mentions/sentencesOf.ts';
import { spokenTexts } from '../mentions/spokenTexts.ts';
import { placeInside } from '../placeInside.ts';

const forAWhile = /\b(?:temporar(?:y|ily)|provisionally|for the time being)\b/i;
/** What a computer keeps for a while is nothing on the bench. */
const notOnTheBench =
  /\b(?:network|wi-?fi|hotspot|access point|file|folder|password|address|page|account|variable|setting|code|software|library|name|memory)s?\b/i;
const putsIn: ReadonlySet<string> = new Set(['fit', 'wire', 'solder', 'tape', 'screw', 'glue', 'plug-in']);

/** Sentences of steps that tell to put something in for a while: a jumper, a bridge, masking tape. */
export function findTemporaries(build: Build): Facts['temporaries'] {
  return spokenTexts(build).flatMap((spoken) => {
    const { step } = spoken;
    if (step === null) return [];
    return sentencesOf(spoken.words).flatMap(({ text, start }) => {
      if (!forAWhile.test(text) || notOnTheBench.test(text)) return [];
      const place = placeInside(spoken.place, start + text.search(/\S/), start + text.trimEnd().length);
      const words = text.replace(/\btemporarily\b|\bprovisionally\b/gi, (word) => ' '.repeat(word.length));
      const actions = actionsIn({ words, place: placeInside(spoken.place, start, start + text.length), step });
      return actions.some(({ kind, told }) => told === 'do' && putsIn.has(kind)) ? [{ step, place }] : [];
    });
  });
}
