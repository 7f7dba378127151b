import deprecated from 'spdx-license-ids/deprecated.json';
import identifiers from 'spdx-license-ids/index.json';

/** One licence of an expression: `id` as the list spells it, `isDeprecated` where the list has a newer name. */
export interface NamedLicence {
  readonly id: string;
  readonly isDeprecated: boolean;
}

/** The licences that an expression names, or the word at which it stops being one. */
export type LicenceExpression = { readonly licences: readonly NamedLicence[] } | { readonly strange: string };

/**
 * Reads an SPDX licence expression: identifiers of the list, `LicenseRef-…`, `+`, `WITH`, `AND`, `OR` and brackets.
 * An exception after `WITH` may have any name.
 */
export function parseLicenceExpression(text: string): LicenceExpression {
  const words = text.match(/[()]|[^\s()]+/g) ?? [];
  const licences: NamedLicence[] = [];
  let at = 0;
  const operator = () => (/^(?:and|or|with|AND|OR|WITH)$/.test(words[at] ?? '') ? words[at]?.toLowerCase() : undefined);

  const simple = (): boolean => {
    const word = words[at] ?? '';
    const licence = operator() === undefined ? licenceNamed(word) : null;
    if (licence === null) return false;
    licences.push(licence);
    at++;
    if (operator() !== 'with') return true;
    at++;
    if (!/^[A-Za-z0-9.:-]+$/.test(words[at] ?? '') || operator() !== undefined) return false;
    at++;
    return true;
  };
  const group = (): boolean => {
    if (words[at] !== '(') return simple();
    at++;
    if (!expression() || words[at] !== ')') return false;
    at++;
    return true;
  };
  // Which of AND and OR binds tighter does not matter for the licences that are named.
  const expression = (): boolean => {
    if (!group()) return false;
    while (operator() === 'and' || operator() === 'or') {
      at++;
      if (!group()) return false;
    }
    return true;
  };

  return expression() && at === words.length ? { licences } : { strange: words[at] ?? words.at(-1) ?? '' };
}

const known: ReadonlyMap<string, NamedLicence> = new Map(
  [
    ...deprecated.map((id) => ({ id, isDeprecated: true })),
    ...identifiers.map((id) => ({ id, isDeprecated: false })),
  ].map((licence) => [licence.id.toLowerCase(), licence]),
);

/** Identifiers are compared without regard to capitals; a reference of one's own stands for itself. */
function licenceNamed(word: string): NamedLicence | null {
  if (/^(?:DocumentRef-[A-Za-z0-9.-]+:)?LicenseRef-[A-Za-z0-9.-]+$/.test(word))
    return { id: word, isDeprecated: false };
  return known.get(word.toLowerCase()) ?? known.get(word.replace(/\+$/, '').toLowerCase()) ?? null;
}
