/** What the words beside a tool say of whether it is needed; null where they say nothing. */
export function saysNeeded(text: string): boolean | null {
  if (
    /\b(?:optional|nice[- ]to[- ]have|not (?:strictly )?(?:needed|necessary|required)|helpful|handy|recommended|if you have|good to have)\b/i.test(
      text,
    )
  ) {
    return false;
  }
  return /\b(?:needed|required|necessary|essential|must(?: have)?|mandatory|always)\b/i.test(text) ? true : null;
}

/** A cell of a column that asks whether a tool is needed. */
export function answersNeeded(text: string): boolean {
  const plain = text.trim().toLowerCase();
  if (/^(?:no|n|0|false|nice|low|nein|non)$/.test(plain)) return false;
  return saysNeeded(plain) ?? true;
}

/** A cell of a column that asks whether a tool is optional. */
export function answersOptional(text: string): boolean {
  return /^(?:yes|y|x|1|true|optional|✓|✔|nice|ja|oui)/i.test(text.trim());
}
