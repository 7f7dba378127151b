import type { Action, ActionKind } from '#core/action.ts';
import type { Build } from '#core/build.ts';
import { remember } from '#core/remember.ts';
import { sentencesOf } from '../mentions/sentencesOf.ts';
import { type SpokenText, spokenTexts } from '../mentions/spokenTexts.ts';
import { placeInside } from '../placeInside.ts';
import table from './actionWords.json';
import { formsOf } from './formsOf.ts';

interface Entry {
  readonly verbs: readonly string[];
  readonly nouns: readonly string[];
  /** By verb: words of which one must stand in the same sentence. */
  readonly objects?: Readonly<Record<string, readonly string[]>>;
}

/** One written form of a verb or a noun. */
interface Form {
  readonly kind: ActionKind;
  /** The base form; null for a noun. */
  readonly verb: string | null;
  readonly tokens: readonly string[];
  /** Words of which the sentence must hold one; empty: any. */
  readonly objects: readonly string[];
}

interface Token {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** Work at the bench that the guide's prose speaks of, in reading order. */
export function findActions(build: Build): Action[] {
  return spokenTexts(build).flatMap(actionsIn);
}

/** The work that one stretch of prose speaks of, in order. Of words that overlap, the longest counts. */
export function actionsIn(spoken: SpokenText): Action[] {
  return sentencesOf(spoken.words).flatMap(({ text, start }) =>
    formsIn(text).map(({ form, from, to }) => ({
      kind: form.kind,
      verb: text.slice(from, to),
      told: form.verb === null ? ('mention' as const) : toldIn(text, from, to, form.verb),
      step: spoken.step,
      place: placeInside(spoken.place, start + from, start + to),
    })),
  );
}

const formsIn = remember((sentence): readonly { form: Form; from: number; to: number }[] => {
  const tokens: Token[] = [...sentence.matchAll(/[\p{L}\p{N}]+(?:[-'’_.][\p{L}\p{N}]+)*/gu)].map((match) => ({
    text: match[0].toLowerCase(),
    from: match.index,
    to: match.index + match[0].length,
  }));
  const found: { form: Form; from: number; to: number }[] = [];
  for (let index = 0; index < tokens.length; index++) {
    const form = (byFirstToken.get(tokens[index]?.text ?? '') ?? []).find((one) =>
      stands(one, tokens, index, sentence),
    );
    const [first, last] = [tokens[index], tokens[index + (form?.tokens.length ?? 1) - 1]];
    if (form === undefined || first === undefined || last === undefined) continue;
    found.push({ form, from: first.from, to: last.to });
    index += form.tokens.length - 1;
  }
  return found;
});

function stands(form: Form, tokens: readonly Token[], at: number, sentence: string): boolean {
  const here = form.tokens.every((text, index) => tokens[at + index]?.text === text);
  if (!here) return false;
  const last = tokens[at + form.tokens.length - 1];
  const next = tokens[at + form.tokens.length];
  const followsDirectly = next !== undefined && last !== undefined && /^\s+$/.test(sentence.slice(last.to, next.from));
  if (followsDirectly && nameTails.has(next.text)) return false;
  return (
    form.objects.length === 0 ||
    tokens.some(({ text }) => form.objects.includes(text) || form.objects.includes(text.replace(/s$/, '')))
  );
}

const refusal =
  /\b(?:do not|don['’]t|never|avoid|without|cannot|can['’]t|must not|no need to|instead of|rather than)\s+(?:\p{L}+\s+){0,2}$/iu;
/** What may stand between the start of a clause and its command. */
const commandStart =
  /(?:^|[,:;(–—-]\s*|\b(?:and|then|now|next|first|finally|carefully|gently|please|to|also|again|you (?:can|should|must|need to|will|have to)|let['’]s|we)\s+)(?:(?:then|now|next|first|finally|carefully|gently|also|just|simply|lastly|again|loosely|lightly|firmly)\s+)*$/iu;

function toldIn(sentence: string, from: number, to: number, verb: string): Action['told'] {
  const before = sentence.slice(0, from);
  if (refusal.test(before)) return 'not';
  const isBase = sentence.slice(from, to).toLowerCase() === verb;
  return isBase && commandStart.test(before.replace(/\s+/g, ' ').replace(/^\s+/, '')) ? 'do' : 'mention';
}

/** Words that make a name of the verb before them: soldering iron, cut edge, drill bit. */
const nameTails: ReadonlySet<string> = new Set(table.nameTails);

const byFirstToken: ReadonlyMap<string, readonly Form[]> = indexForms();

/** Every form by its first token, the longest first. */
function indexForms(): Map<string, Form[]> {
  const index = new Map<string, Form[]>();
  for (const [kind, { verbs, nouns, objects }] of Object.entries(table.kinds as Readonly<Record<ActionKind, Entry>>)) {
    const written: [string | null, string][] = [
      ...verbs.flatMap((verb) => formsOf(verb).map((form): [string, string] => [verb, form])),
      ...nouns.map((noun): [null, string] => [null, noun]),
    ];
    for (const [verb, text] of written) {
      const tokens = text.split(' ');
      const form = { kind: kind as ActionKind, verb, tokens, objects: verb === null ? [] : (objects?.[verb] ?? []) };
      const first = tokens[0] ?? '';
      index.set(
        first,
        [...(index.get(first) ?? []), form].sort((a, b) => b.tokens.length - a.tokens.length),
      );
    }
  }
  return index;
}
