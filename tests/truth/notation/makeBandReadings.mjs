// Writes bandReadings.json with an independent reader of colour bands.
// Usage, in a folder where resistor-data 1.1.1 is installed: node makeBandReadings.mjs > bandReadings.json
import { createRequire } from 'node:module';

const { bandsToNotation } = createRequire(`${process.cwd()}/`)('resistor-data');
const digits = ['black', 'brown', 'red', 'orange', 'yellow', 'green', 'blue', 'violet', 'grey', 'white'];
const multipliers = digits.slice(0, 7);
// It writes mega as a small m.
const upper = ([notation, tolerance]) => [notation.replace('m', 'M'), tolerance];
const rows = [];
for (const first of digits.slice(1)) {
  for (const second of digits) {
    for (const [i, multiplier] of multipliers.entries()) {
      const four = [first, second, multiplier, ['gold', 'silver', 'brown', 'red'][i % 4]];
      rows.push([four.join(' '), ...upper(bandsToNotation(four, 4))]);
      const five = [
        first,
        second,
        digits[(i * 3) % 10],
        multiplier,
        ['brown', 'red', 'green', 'blue', 'violet'][i % 5],
      ];
      rows.push([five.join(' '), ...upper(bandsToNotation(five, 5))]);
    }
  }
}
process.stdout.write(`[\n${rows.map((row) => JSON.stringify(row)).join(',\n')}\n]\n`);
