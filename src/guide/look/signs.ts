import type { LookSign, PartForm, PartLook } from '../guide.ts';

/** What holds by a standard, by arithmetic or by the maker's own words. */
export function sure(words: string): LookSign {
  return { words, usual: false };
}

/** What makers mostly do. */
export function usual(words: string): LookSign {
  return { words, usual: true };
}

/** A part of a form that needs nothing but its name, with what is printed on it. */
export function formed(form: PartForm, signs: readonly LookSign[] = [], ...print: string[]): PartLook {
  return { drawing: { kind: 'form', form, print }, signs };
}

/** Words about a part whose form is not known. */
export function unseen(...signs: LookSign[]): PartLook {
  return { drawing: null, signs };
}

/** That makers print the type on it, where it is known. */
export function typePrint(type: string | null): LookSign[] {
  return type === null ? [] : [usual(`Often printed with its type, ${type}, beside signs of its maker.`)];
}
