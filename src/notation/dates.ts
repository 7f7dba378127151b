/** Dates as people write them. */
export { parseDate } from './parseDate.ts';
