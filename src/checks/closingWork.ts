import type { Build } from '#core/build.ts';
import { type SectionSentence, stepSentences } from './stepSentences.ts';

/** A sentence that has the builder shut the case, and whether it is shut by something else than screws. */
export interface Closing {
  readonly sentence: SectionSentence;
  readonly isSnapped: boolean;
}

const shell = '(?:lid|cover|case|enclosure|housing|box|back ?plate|top half|upper shell|top shell)';
const between = '(?:[\\p{L}\\d-]+ ){0,2}';
const shuts = new RegExp(
  `\\b(?:(?:close|shut|seal)(?: up)? (?:the|its|your) ${between}${shell}|(?:snap|screw|press|push|put|clip|click|glue|place|fasten|slide) (?:on )?(?:the|its|your) ${between}(?:lid|cover|back ?plate|top half|upper shell|top shell)(?: [\\p{L}]+){0,3}? (?:on|onto|over|down|shut|closed|(?:in|into) place))\\b`,
  'iu',
);
const snapped = /\b(?:snap|press|push|clip|click|glue|seal)/iu;

/** The first sentence of a step by which the case is shut; null where none is. */
export function closingWork(build: Build): Closing | null {
  const sentence = stepSentences(build).find(
    ({ text }) => shuts.test(text) && !/\b(?:if|when|before|until|not|later)\b/iu.test(text),
  );
  return sentence === undefined ? null : { sentence, isSnapped: snapped.test(shuts.exec(sentence.text)?.[0] ?? '') };
}
