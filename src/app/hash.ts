import type { Hash } from '#core/place.ts';

/** SHA-256 of bytes, as lower-case hexadecimal digits. */
export async function hashOf(bytes: Uint8Array): Promise<Hash> {
  const digest = await crypto.subtle.digest('SHA-256', new Uint8Array(bytes));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
