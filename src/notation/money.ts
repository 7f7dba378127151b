/** Sums of money. */
export { parseMoney } from './parseMoney.ts';
