/**
 * One spelling for characters that look alike: compatibility forms (both micro and ohm signs, wide digits,
 * no-break spaces), vulgar fractions as `1/2`, one minus, one space. Raised and lowered digits become `^`, since
 * folding `10³` to `103` would change its meaning.
 */
export function plainForm(text: string): string {
  return text
    .replace(/(?<=\d)(?=[¼-¾⅐-⅞])/gu, ' ')
    .replace(/[²³¹⁰-₟]/gu, '^')
    .normalize('NFKC')
    .replace(/⁄/gu, '/')
    .replace(/[‐‑−]/gu, '-')
    .replace(/\s+/gu, ' ')
    .trim();
}
