/** Codes that are printed on parts. */
export { capacitorCodeOf, capacitorToleranceLetter, parseCapacitorCode } from './capacitorCode.ts';
export { colourBandsOf, parseColourBands, valueBandsOf } from './colourBands.ts';
export { eia96Of, parseEia96 } from './eia96.ts';
export { isPackage } from './packageCode.ts';
export { parseSmdResistorCode, smdResistorCodeOf } from './smdResistorCode.ts';
