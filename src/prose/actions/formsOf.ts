/** Strong verbs of the workshop, with the past forms that no rule gives. */
const strong: Readonly<Record<string, readonly string[]>> = {
  cut: ['cut', 'cutting'],
  put: ['put', 'putting'],
  bend: ['bent'],
  grind: ['ground'],
  take: ['took', 'taken'],
  saw: ['sawn'],
  sew: ['sewn'],
  stick: ['stuck'],
};

/** Verbs of more than one syllable whose last one is not stressed, so that no consonant doubles. */
const unstressed = /(?:er|en|et|it|op)$/;

/** The forms in which an English verb is written; of a phrase, the first word changes: 'switch on', 'switched on'. */
export function formsOf(phrase: string): string[] {
  const [verb = '', ...rest] = phrase.split(' ');
  const tail = rest.length === 0 ? '' : ` ${rest.join(' ')}`;
  return [...new Set(singleForms(verb))].map((form) => `${form}${tail}`);
}

function singleForms(verb: string): string[] {
  const last = verb.split('-').at(-1) ?? verb;
  const third = /(?:s|x|z|ch|sh)$/.test(verb) ? `${verb}es` : `${verb}s`;
  const known = strong[last];
  if (verb.endsWith('e')) {
    const stem = verb.slice(0, -1);
    return [verb, third, `${verb}d`, `${stem}ing`, ...(known ?? [])];
  }
  const doubles = /[^aeiou][aeiou][bdgmnprt]$/.test(last) && (last.length <= 5 || !unstressed.test(last));
  const stem = doubles && !(last.length > 4 && unstressed.test(last)) ? `${verb}${verb.at(-1)}` : verb;
  return known === undefined
    ? [verb, third, `${stem}ed`, `${stem}ing`]
    : [verb, third, `${stem}ing`, ...known.map((form) => `${verb.slice(0, verb.length - last.length)}${form}`)];
}
