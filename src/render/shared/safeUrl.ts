/**
 * True for an address that a published page may carry: http, https, mailto, or relative to the page.
 * Browsers skip white space and control characters inside a scheme, so an address that holds any is refused.
 */
export function isSafeUrl(url: string): boolean {
  if (/[\s\\\p{Cc}]/u.test(url)) return false;
  if (/^(https?:\/\/|mailto:)[^/]/i.test(url)) return true;
  return url !== '' && !url.startsWith('/') && !/^[^/?#]*:/.test(url);
}

/** A path inside the published folder as a relative address. */
export function relativeUrl(path: string): string {
  return path.split('/').map(encoded).join('/');
}

/** The address of a block on the same page. */
export function fragmentUrl(id: string): string {
  return `#${encoded(id)}`;
}

/** Half a surrogate pair has no encoding; a page shows it as the replacement character. */
function encoded(text: string): string {
  return encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\ufffd'));
}
