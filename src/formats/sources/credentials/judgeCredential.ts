import type { Secret } from '#core/code.ts';
import { wordsOf } from '../facts/words.ts';
import placeholders from '../tables/placeholders.json';
import secretNames from '../tables/secretNames.json';

export type SecretKind = Secret['kind'];

const names = secretNames.names.map(({ pattern, kind }) => ({
  pattern: new RegExp(pattern.replace('TAIL', secretNames.tail)),
  kind: kind as SecretKind,
}));
const notWhenLast = new Set(secretNames.notWhenLast);
const stands = placeholders.patterns.map((pattern) => {
  const spelled = pattern
    .replaceAll('NOUN', `(?:${placeholders.nouns})`)
    .replaceAll('VERB', `(?:${placeholders.verbs})`)
    .replaceAll('SEP', placeholders.separator);
  return new RegExp(`^(?:${spelled})$`, 'i');
});

/** The kind of credential that a name promises; null for any other name. */
export function secretKindOf(name: string): SecretKind | null {
  const words = wordsOf(name);
  const last = words.at(-1) ?? '';
  if (notWhenLast.has(last)) return null;
  const text = words.join(' ');
  return names.find(({ pattern }) => pattern.test(text))?.kind ?? null;
}

const longestPlaceholder = 64;

/** Whether a text stands for a credential without being one, such as 'your-password'. */
export function isPlaceholder(text: string): boolean {
  const value = text.trim();
  // Patterns that repeat words could take very long over a long text; nobody writes placeholders of that length.
  if (value.length > longestPlaceholder) return /^(.)\1*$/.test(value);
  return stands.some((pattern) => pattern.test(value));
}

/** Whether a text can be the credential that its name promises. */
export function isCredential(text: string, kind: SecretKind): boolean {
  const value = text.trim();
  if (isPlaceholder(value) || value.length > 4000 || /%[sdiu]|\{\w*\}|^![a-z_]+ /.test(value)) return false;
  // 'Enter password:' is addressed to a reader.
  if (/\s/.test(value) && /[:?.…]$/.test(value)) return false;
  switch (kind) {
    case 'wifi-name':
      // IEEE 802.11: a network's name has at most 32 octets.
      return value.length <= 32;
    case 'wifi-password':
      // IEEE 802.11i: a passphrase has 8 to 63 characters, or it is 64 hexadecimal digits.
      return value.length >= 8 && value.length <= 64;
    case 'token':
    case 'key':
      return value.length >= (kind === 'key' ? 16 : 12) && isOneWord(value) && looksRandom(value);
    default:
      return value.length >= 4 && value.length <= 128 && !/[\r\n]|\\n/.test(value);
  }
}

/** Letters and digits mixed, or a long run of letters in both cases: no word that a program would look up. */
function looksRandom(text: string): boolean {
  if (/\d/.test(text) && /[A-Za-z]/.test(text)) return true;
  return /^\d{16,}$/.test(text) || (/^[A-Za-z+/=]{20,}$/.test(text) && /[a-z][A-Z]{2}|[A-Z]{2}[a-z]/.test(text));
}

/** Hexadecimal, base64 and what issuers put between their parts; no path. */
function isOneWord(text: string): boolean {
  return /^[\w+/=.:~-]+$/.test(text) && !/^\.{0,2}\/|^[a-z\d_.-]+(\/[a-z\d_.-]+)+$/.test(text);
}
