import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { findDurations } from '#notation/findDurations.ts';
import { type FrontSentence, promisesInFront } from './promisesInFront.ts';

/** A time that the guide promises for the whole build. */
export interface PromisedTime {
  readonly words: string;
  readonly place: TextPlace;
  /** Minutes, with what the words leave open: rounding, ‘about’, ‘up to’. */
  readonly least: number;
  readonly most: number;
}

const roughly = 'about|around|roughly|approximately|approx|some|ca';
const lead = `(?:(?:${roughly})\\b\\.?|at least|up to|less than|under|over|more than|(?:an?|one|two|three) (?:long |short )?(?:evening|afternoon|morning|weekend|day)s?|or|and)\\b`;
const takes =
  /\b(?:takes?|needs?|needed|requires?|required|allow|plan|reckon|set aside|spend|(?:buil[dt]|done|finish(?:ed)?|ready|ma[dk]e|assembled?)(?: (?:it|one))? in)\b/iu;
const inAll = /\b(?:all told|in total|in all|altogether)\b/iu;
/** Words for the build as a whole, wherever they stand. */
const theBuild =
  /\b(?:builds?|building|built|assembl\w+|project|everything|whole|(?:the|all) work|kit|construction|total|all told|in all|altogether|to (?:build|make|assemble|finish|complete))\b/iu;
/** Words that mean it where nothing else has been spoken of. */
const it =
  /\b(?:it|this|work|job|you|done|finished|ready|made|making)\b|^\W*(?:takes?|needs?|requires?|allow|plan|reckon|set aside|spend)\b/iu;
const label = new RegExp(
  `^\\W*(?:(?:total|overall|estimated|approximate|approx\\.?|build(?:ing)?|assembly|working|work) )*(?:time|duration|how long)\\b[^.:]{0,30}:\\W*(?:${lead}\\W*)*$`,
  'iu',
);
/** A sentence without a verb: ‘Two evenings, about five hours.’ */
const bareBefore = new RegExp(`^\\W*(?:${lead}\\W*)*$`, 'iu');
const forWhom =
  'for (?:you|one|two|an? (?:beginner|novice)|beginners|everything|all|most|some(?:body|one)|the (?:whole|build|work|first))\\b';
const ofWork = 'of (?:[\\p{L}-]+ )?(?:work|building|soldering|assembly|your time)\\b';
const toBuild = 'to (?:build|make|assemble|finish|complete|put|do)\\b';
const bareAfter = new RegExp(
  `^(?:\\s*(?:[.,:!)]|$)|\\s+(?:or so\\b|at the (?:table|bench|desk)\\b|${ofWork}|${forWhom}|(?:in (?:all|total)|altogether|together|overall|all told|and)\\b|${toBuild}))`,
  'iu',
);
/** ‘Two hours to charge’, ‘two hours for the varnish’. */
const ofSomethingElse = new RegExp(`^\\s+(?:(?!${toBuild})to |(?!${ofWork})of |(?!${forWhom})for )`, 'iu');
const otherWork =
  /\b(?:print\w*|dr(?:y|ies|ied|ying)|set(?:s|ting)?(?! aside| up)|settl\w*|heat\w*|warm\w*|cool\w*|cur(?:e|es|ing)|charg\w*|batter\w*|runs?|lasts?|ship\w*|deliver\w*|every|each|per|after|before|until|till|ago|later|step|wait\w*|unattended|without you)\b/iu;
const about = new RegExp(`(?:\\b(?:${roughly})\\b\\.?|[~≈])\\s*$`, 'iu');
const upTo = /\b(?:less than|under|below|within|at most|up to|no more than|maximum(?: of)?)\s*$/iu;
const atLeast = /\b(?:(?<!no )more than|over|at least|minimum(?: of)?)\s*$/iu;

/** What the guide promises before its first step. */
export function promisedTimes(build: Build): PromisedTime[] {
  return promisesInFront(build).flatMap((sentence) => promiseIn(sentence) ?? []);
}

function promiseIn({ text, ofTheWhole, placeAt }: FrontSentence): PromisedTime | null {
  const durations = findDurations(text).filter(({ from, to }) => !otherWork.test(clauseAround(text, from, to)));
  const [first] = durations;
  const last = durations.at(-1);
  if (first === undefined || last === undefined) return null;
  const [before, after] = [text.slice(0, first.from), text.slice(first.to)];
  if (otherWork.test(before) || !isOfTheBuild(text, before, after, ofTheWhole)) return null;
  // Who rounds is off by at most half of what is rounded to; ‘about’ leaves twice as much open.
  const isRough = about.test(before) || /^ or so\b/iu.test(after);
  const rounding = Math.max(...durations.map(({ grain }) => grain)) * (isRough ? 1 : 0.5);
  // ‘Four hours for you and one hour for a helper’ may be four hours or five.
  const least = Math.max(...durations.map((one) => one.least));
  const most = durations.reduce((sum, one) => sum + one.most, 0);
  return {
    words: quoted(text, first.from, last.to),
    place: placeAt(first.from, first.to),
    least: upTo.test(before) ? 0 : least - rounding,
    most: atLeast.test(before) ? Number.POSITIVE_INFINITY : most + rounding,
  };
}

function isOfTheBuild(text: string, before: string, after: string, ofTheWhole: boolean): boolean {
  if (label.test(before)) return true;
  if (ofSomethingElse.test(after)) return false;
  if (theBuild.test(text) && (takes.test(text) || inAll.test(text))) return true;
  return ofTheWhole && ((takes.test(text) && it.test(text)) || (bareBefore.test(before) && bareAfter.test(after)));
}

/** From the last mark of a clause before a time to the first one after it. */
function clauseAround(text: string, from: number, to: number): string {
  const mark = /[,:;()–—](?!\d)|\b(?:plus|while)\b|\band (?=about |another |some |\d|an? |one |two |three )/giu;
  const before = [...text.slice(0, from).matchAll(mark)].at(-1);
  const after = [...text.slice(to).matchAll(mark)][0];
  return text.slice(before === undefined ? 0 : before.index + 1, after === undefined ? text.length : to + after.index);
}

/** The sentence, or the times in it where it is long. */
function quoted(text: string, from: number, to: number): string {
  const sentence = text.replace(/\s+/gu, ' ').trim();
  return sentence.length <= 90 ? sentence : text.slice(from, to).replace(/\s+/gu, ' ');
}
