/**
 * A name for an address or an id: lower case, accents and ligatures of Latin letters folded to ASCII, letters of other
 * scripts kept, everything else a hyphen. `untitled` where nothing is left.
 */
export function slugOf(text: string): string {
  const slug = foldLatin(text.normalize('NFKC'))
    .toLowerCase()
    .replace(/['’ʼ]/gu, '')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-|-$/gu, '');
  return slug === '' ? 'untitled' : slug;
}

/**
 * A slug that is not taken yet. A repeat takes its parent's slug along; where that is taken too, a letter is added,
 * never a number, since numbers would shift when a heading is added before.
 */
export function uniqueSlug(text: string, taken: ReadonlySet<string>, parent?: string): string {
  const plain = slugOf(text);
  if (!taken.has(plain)) return plain;
  const long = parent === undefined ? plain : `${slugOf(parent)}-${plain}`;
  if (!taken.has(long)) return long;
  for (let n = 1; ; n++) {
    const slug = `${long}-${lettersOf(n)}`;
    if (!taken.has(slug)) return slug;
  }
}

/** Latin letters without accents, ligatures written out; other scripts as they are. */
export function foldLatin(text: string): string {
  return text
    .normalize('NFD')
    .replace(/(\p{Script=Latin})\p{M}+/gu, '$1')
    .normalize('NFC')
    .replace(/[ßẞæÆœŒøØłŁđĐðÐþÞı]/gu, (letter) => written[letter] ?? letter);
}

const written: Partial<Record<string, string>> = {
  ß: 'ss',
  ẞ: 'SS',
  æ: 'ae',
  Æ: 'AE',
  œ: 'oe',
  Œ: 'OE',
  ø: 'o',
  Ø: 'O',
  ł: 'l',
  Ł: 'L',
  đ: 'd',
  Đ: 'D',
  ð: 'd',
  Ð: 'D',
  þ: 'th',
  Þ: 'TH',
  ı: 'i',
};

/** b, c … z, ba, bb …: the second, third … of a name. */
function lettersOf(n: number): string {
  const last = String.fromCharCode(97 + (n % 26));
  return n < 26 ? last : lettersOf(Math.floor(n / 26)) + last;
}
