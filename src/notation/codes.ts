/** Codes that are printed on parts. */
export { parseCapacitorCode } from './capacitorCode.ts';
export { colourBandsOf, parseColourBands } from './colourBands.ts';
export { parseEia96 } from './eia96.ts';
export { isPackage } from './packageCode.ts';
export { parseSmdResistorCode } from './smdResistorCode.ts';
