/**
 * Sixteen hexadecimal digits that change when the text does: two rounds of FNV-1a (32 bit) with
 * different offsets. For telling versions of a fact apart, not for security.
 */
export function digestOf(text: string): string {
  return fnv1a(text, 0x811c9dc5) + fnv1a(text, 0x7ee3623b);
}

function fnv1a(text: string, offset: number): string {
  let hash = offset;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    hash = Math.imul(hash ^ (code & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (code >> 8), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}
