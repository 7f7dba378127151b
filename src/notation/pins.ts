/** Pins, the ends of wires, and what is joined. */
export { comparePins, type PinComparison } from './comparePins.ts';
export { parseEndpoint, parseWiringEnd } from './endpoint.ts';
export { type ParsedJoin, parseJoin } from './parseJoin.ts';
export { type PinName, parsePin } from './parsePin.ts';
