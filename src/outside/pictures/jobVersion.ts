/** Raised whenever the same bytes and wish give another answer than before: cached answers are then passed over. */
export const jobVersion = 3;

/** Raised whenever the same pixels give other measures than before. */
export const measureVersion = 1;
