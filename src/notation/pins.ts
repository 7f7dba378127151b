/** Pins, the ends of wires, and what is joined. */
export { comparePins, type PinComparison } from './comparePins.ts';
export { parseEndpoint, parseWiringEnd } from './endpoint.ts';
export { parseJoin } from './parseJoin.ts';
export { parsePin } from './parsePin.ts';
