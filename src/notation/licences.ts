/** Names of licences. */
export { parseLicenceExpression } from './licenceExpression.ts';
