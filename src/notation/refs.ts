/** Reference designators. */
export { isRef, parseRefs, type RefsReading } from './parseRefs.ts';
export { type RefClass, refClass } from './refClass.ts';
