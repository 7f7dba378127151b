import { remember } from '#core/remember.ts';

/**
 * The same text, character for character as long, with the markup blanked: marks of emphasis and code, HTML tags,
 * link targets, attribute lists. The alternative text and the caption of a picture become sentences of their own.
 */
export const maskMarkup = remember((text) =>
  text
    .replace(/<!--[\s\S]*?-->|<\/?[A-Za-z][^<>]*>/g, blank)
    .replace(link, maskLink)
    .replace(/\]\([^()\s]*\)|\]\[[^\]]*\]|\{:?[^{}\n]*[.#=][^{}\n]*\}/g, blank)
    .replace(/[*`[\]]|!(?=\[)|^[ \t]*>[ \t]?/gm, blank)
    .replace(/[\r\n\t]/g, ' '),
);

const link = /(!?)\[([^\][]*)\]\(\s*(?:<[^>]*>|[^\s()]*(?:\([^\s()]*\)[^\s()]*)*)(?:\s+(["'])([\s\S]*?)\3)?\s*\)/g;

function maskLink(whole: string, picture: string, words: string, _mark: string | undefined, title = ''): string {
  if (picture === '') return ` ${words}`.padEnd(whole.length);
  const lead = `  ${words}. `;
  const at = whole.lastIndexOf(title);
  return title === '' ? lead.padEnd(whole.length) : `${lead.padEnd(at)}${title}. `.padEnd(whole.length);
}

function blank(text: string): string {
  return ' '.repeat(text.length);
}
