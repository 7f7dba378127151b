/** A grey picture of one pixel, the smallest that is a picture; for the examples of checks. */
export const tinyPng: Uint8Array = Uint8Array.from(
  atob('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg=='),
  (character) => character.charCodeAt(0),
);
