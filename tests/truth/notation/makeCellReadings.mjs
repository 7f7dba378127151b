// Writes cellReadings.json with an independent reader of part descriptions.
// Usage, in a folder where electro-grammar 1.3.0 is installed: node makeCellReadings.mjs > cellReadings.json
import { createRequire } from 'node:module';

const { parse } = createRequire(`${process.cwd()}/`)('electro-grammar');
// It needs the kind of part in the text where nothing else tells; that word is not given to our reader.
const cells = [
  ['resistor', '4k7 0603 1%'],
  ['resistor', '10k 1/4W 5% 0805'],
  ['resistor', '2R2 0805 1%'],
  ['resistor', '1M0 0402 1%'],
  ['resistor', '4.7kohm 0603'],
  ['resistor', '330 ohm 0805 5%'],
  ['resistor', '47k3 0603 0.5%'],
  ['resistor', '1k 1206 125mW'],
  ['resistor', '100R'],
  ['resistor', '0R'],
  ['resistor', '1M 1% 0603 100mW'],
  ['resistor', '10 k 1%'],
  ['resistor', '2M2 5% 0.25W'],
  ['resistor', '220'],
  ['resistor', '1/8W 220'],
  ['capacitor', '100nF 0603 C0G 10% 25V'],
  ['capacitor', '0.1uF 0805 X7R 50V 10%'],
  ['capacitor', '22pF 0402 C0G 5% 50V'],
  ['capacitor', '10uF 1206 X5R 16V 20%'],
  ['capacitor', '10nF 0603 X7R 50V'],
  ['capacitor', '4n7'],
  ['capacitor', '2u2 16V'],
  ['capacitor', '100n 50V 0805'],
  ['capacitor', '2µ2 10V'],
  ['capacitor', '0u1'],
  ['capacitor', '10 uF 6.3 V'],
];
const rows = cells.map(([type, text]) => ({ type, text, ...parse(`${type} ${text}`) }));
process.stdout.write(`[\n${rows.map((row) => JSON.stringify(row)).join(',\n')}\n]\n`);
