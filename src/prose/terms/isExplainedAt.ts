/**
 * Whether words are explained where they stand: 'a via, a small plated hole', 'flux means …', 'a header (a row of
 * pins)', 'small plated holes (vias)', 'called a jig', or a link on the word. `source` is the text with its markup.
 */
export function isExplainedAt(words: string, source: string, start: number, end: number): boolean {
  const before = words.slice(0, start);
  const after = words.slice(end);
  const isLink = /^[^\]\n]{0,20}\]\(/.test(source.slice(end)) && /\[[^\]\n]{0,20}$/.test(source.slice(0, start));
  return (
    isLink || tellsAfter.test(after) || (/\(\s*$/.test(before) && /^\s*\)/.test(after)) || tellsBefore.test(before)
  );
}

/** Brackets hold a sense where they hold several plain words; a reference or a size is none. */
const tellsAfter = new RegExp(
  [
    '^s?\\s*\\(\\s*(?!see\\b|optional|or\\b|fig|step)(?:[\\p{L}-]+[\\s,]+){2,}[^)]*\\)',
    '^s?\\s*(?:,|–|—|:|-(?=\\s))\\s*(?:a|an|which|that is|i\\.e\\.|meaning|in other words|or rather|this)\\b',
    '^s?\\s+(?:is|are)\\s+(?:a|an|the|what|when|where|how|called|like|just|simply|short for)\\b',
    '^s?\\s+(?:means?|stands? for|refers? to|describes?|tells?|helps?|makes?|lets?|keeps?|holds?|allows?|limits?|stops?|protects?|carr(?:y|ies))\\b',
  ].join('|'),
  'iu',
);

const tellsBefore =
  /\b(?:called|known as|named|what (?:is|are)|also called|meaning of|word for|short for)\s+(?:an?\s+|the\s+|['"‘“]\s*)?$/iu;
