/** How many, or how much. */
export { asNeeded, parseAmount } from './parseAmount.ts';
