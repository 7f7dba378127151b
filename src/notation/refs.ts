/** Reference designators. */
export { isRef, parseRefs } from './parseRefs.ts';
export { type RefClass, refClass } from './refClass.ts';
