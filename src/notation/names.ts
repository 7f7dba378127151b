/** Names for addresses and ids, and words for comparing. */
export { slugOf, uniqueSlug } from './slug.ts';
export { tokensOf } from './tokens.ts';
