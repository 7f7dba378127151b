const fence = /^ {0,3}(`{3,}|~{3,})/;
const attributesLine = /^[ \t]*\{:[^{}]*\}[ \t]*$/;
const templateLine = /^[ \t]*\{%[^%]*%\}[ \t]*$/;
const templateInTarget = /(\]\(|\]: *)([^()\n]*?\{\{[^{}\n]*\}\}[^()\s]*)/g;

/**
 * The same text, character for character as long, without what a site generator adds to Markdown: lines of
 * attributes or template tags become blank, so that they end no list of link definitions, and the blanks inside
 * `{{ … }}` of a link target become no-break spaces, so that the target stays one word.
 */
export function maskSiteMarkup(text: string): string {
  if (!text.includes('{')) return text;
  let fenceMarks: string | null = null;
  return text.replace(/[^\r\n]+/g, (line) => {
    const marks = fence.exec(line)?.[1];
    if (fenceMarks !== null) {
      if (marks?.startsWith(fenceMarks)) fenceMarks = null;
      return line;
    }
    if (marks !== undefined) fenceMarks = marks;
    if (attributesLine.test(line) || templateLine.test(line)) return ' '.repeat(line.length);
    return line.replace(templateInTarget, (_, opening: string, target: string) => opening + hideBlanks(target));
  });
}

/** A link target with the blanks that masking hid. */
export function unmaskTarget(target: string): string {
  return target.replace(/\{\{.*?\}\}/g, (template) => template.replaceAll('\u00a0', ' '));
}

function hideBlanks(target: string): string {
  return target.replace(/\{\{.*?\}\}/g, (template) => template.replaceAll(' ', '\u00a0'));
}
