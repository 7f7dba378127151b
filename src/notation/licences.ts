/** Names of licences. */
export { type LicenceExpression, type NamedLicence, parseLicenceExpression } from './licenceExpression.ts';
