/** Values as people write them, and the one way they are written here. */
export { type FoundQuantity, findQuantities } from './findQuantities.ts';
export { formatQuantity } from './formatQuantity.ts';
export { parseValue } from './parseValue.ts';
export { parseValueCell } from './parseValueCell.ts';
export { sameQuantity } from './sameQuantity.ts';
