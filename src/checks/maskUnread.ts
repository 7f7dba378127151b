import { rememberFor } from '#core/remember.ts';
import type { SourceText } from '#core/sourceText.ts';

/**
 * A text with blanks in place of what no builder reads as prose: in Markdown code, comments and addresses, in
 * other files addresses. Offsets stay as they are.
 */
export const maskUnread = rememberFor(({ file, text }: SourceText): string => {
  const isMarkdown = /\.(?:md|markdown|mdx)$/i.test(file);
  const patterns = isMarkdown ? [...markup, address] : [address];
  return patterns.reduce((masked, pattern) => masked.replace(pattern, blanks), text);
});

const markup: readonly RegExp[] = [
  /<!--[\s\S]*?(?:-->|$)/g,
  /^( {0,3})(`{3,}|~{3,})[^\n]*\n[\s\S]*?(?:^ {0,3}\2[`~]*[ \t]*$|(?![\s\S]))/gm,
  /(?<!`)(`+)(?!`)[^\n]*?(?<!`)\1(?!`)/g,
  /(?<=\]\()[^)\s]+/g,
];

const address = /\bhttps?:\/\/[^\s<>")]+/g;

function blanks(words: string): string {
  return words.replace(/[^\r\n]/g, ' ');
}
