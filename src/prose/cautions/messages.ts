import words from './messageWords.json';
import { phrasesOf } from './phrases.ts';

const harm = phrasesOf(words.harm);
const avoid = phrasesOf(words.avoid);
const plainHarm = phrasesOf(words.plainHarm);
const injury = phrasesOf(words.injury);
const electrocution = phrasesOf(words.electrocution);

/** Whether a message says what happens to somebody. */
export function tellsHarm(message: string): boolean {
  return harm.find(message) !== null;
}

/** Whether a message says how to keep out of harm. */
export function tellsAvoidance(message: string): boolean {
  return avoid.find(message) !== null;
}

/** Whether plain words warn, without a signal word. */
export function warns(sentence: string): boolean {
  return plainHarm.find(sentence) !== null || /\b(?:never|do not|don['’]t|wear)\b/i.test(sentence);
}

/** Whether a message speaks of people coming to harm, which a NOTICE never does. */
export function tellsInjury(message: string): boolean {
  return injury.find(message) !== null;
}

/** Whether a message speaks of a deadly shock, for which CAUTION is too little. */
export function tellsElectrocution(message: string): boolean {
  return electrocution.find(message) !== null;
}
