/** Words that stand where something is still to be written. `at` counts from the start of the text. */
export interface Placeholder {
  readonly words: string;
  readonly at: number;
}

/**
 * Marks that writers leave for themselves (common practice). 'TODO' counts in capitals alone: a 'to-do list' is
 * a thing of its own; 'XXX' not inside a part number; 'insert … here' only with something that a page is made of,
 * since a battery is inserted here and there. What a builder is to put in ('<your network>') is no gap.
 */
const patterns: readonly RegExp[] = [
  /(?<![\p{L}\p{N}_.\-/])(?:TODO|FIXME|TBD|TBC|XXX)(?![\p{L}\p{N}_\-/]|\.\p{L})/gu,
  /\blorem ipsum\b/giu,
  /\b(?:insert|add|put|place)\s+(?:\p{L}+\s+){0,3}?(?:table|picture|photo|image|link|text|diagram|schematic|description|figure|screenshot|title|video|drawing|caption)s?\s+(?:of\s+(?:\p{L}+\s+){1,4}?)?here\b/giu,
  /\b(?:coming soon|to be (?:written|added|done|determined|decided|completed|confirmed)|(?:your|the) (?:text|title|description|picture|image) (?:goes )?here)\b/giu,
  /(?<!\?)\?{3,}(?!\?)/gu,
  /(?<![\p{L}\p{N}])(?:T\.B\.[DAC]\.|TBA(?![\p{L}\p{N}_-]))/gu,
  /(?<![\p{L}\p{N}.,])(?:xx|XX|__)\s?(?:mm|cm|V|mA|A|k?Ω|ohms?|min|minutes|hours|g)(?![\p{L}\p{N}])/gu,
  /\[(?:insert|add|fill in|describe|placeholder)\b[^\]\n]{0,60}\](?![([:])/giu,
  /\b(?:photos?|pictures?|images?|details?|description|documentation|instructions|schematics?|videos?|text)\s+(?:(?:will|to)\s+(?:follow|come)|follows? (?:soon|later)|will be added)\b(?!\s+(?:the|these|in|by|automatically))/giu,
];

/** Every placeholder in a text, in order. */
export function findPlaceholders(text: string): Placeholder[] {
  const found = patterns.flatMap((pattern) =>
    [...text.matchAll(pattern)].map((match) => ({ words: match[0], at: match.index })),
  );
  return found
    .sort((a, b) => a.at - b.at)
    .filter(({ at }, index, all) => {
      const before = all[index - 1];
      return before === undefined || at >= before.at + before.words.length;
    });
}

/** Whether a text holds a placeholder. */
export function hasPlaceholder(text: string): boolean {
  return findPlaceholders(text).length > 0;
}
