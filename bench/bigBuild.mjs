// A generated build of a given size whose parts, wiring, code and steps agree.
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** Writes a build of `steps` steps, `parts` parts and `connections` wires into a folder; `word` tells builds apart. */
export function writeBigBuild(folder, { steps, parts, connections, word = 'row' }) {
  mkdirSync(path.join(folder, 'firmware'), { recursive: true });
  const refs = Array.from({ length: parts - 1 }, (_, at) => `R${at + 1}`);
  const ends = Array.from({ length: connections }, (_, at) => {
    const from = refs[at % refs.length];
    const turn = Math.floor(at / refs.length);
    return [`${from}.${turn + 1}`, `U1.P${at + 1}`];
  });
  writeFileSync(
    path.join(folder, 'parts.csv'),
    [
      'Reference,Quantity,Description,Value,Rating',
      'U1,1,Controller board with many pins,,',
      ...refs.map((ref, at) => `${ref},1,Resistor for ${word} ${at + 1},${((at % 90) + 10) * 10}R,0.25 W`),
    ].join('\n'),
  );
  writeFileSync(
    path.join(folder, 'wiring.csv'),
    ['from,to,net', ...ends.map(([from, to], at) => `${from},${to},N${at + 1}`)].join('\n'),
  );
  writeFileSync(path.join(folder, 'tools.csv'), 'name,needed\nsoldering iron,needed\n');
  writeFileSync(
    path.join(folder, 'firmware/main.cpp'),
    '#include <Arduino.h>\nvoid setup() { Serial.begin(115200); }\nvoid loop() {}\n',
  );
  const text = ['# A board of many resistors', '', 'It shows what a large build costs.', ''];
  for (let step = 0; step < steps; step++) {
    const here = refs.filter((_, at) => at % steps === step);
    // A wire can only be made once its resistor is there.
    const wires = ends.filter(([from]) => here.includes(from.split('.')[0]));
    text.push(
      `## Fit ${word} ${step + 1}`,
      `- Parts: ${[...(step === 0 ? ['U1'] : []), ...here].join(', ')}`,
      '- Tools: soldering iron',
    );
    if (wires.length > 0) text.push(`- Connects: ${wires.map(([from, to]) => `${from} – ${to}`).join(', ')}`);
    text.push(
      '- Time: 5 min',
      '',
      `Solder ${here.join(' and ')} into ${word} ${step + 1}. Trim the leads. Look at each joint of ${word} ${step + 1} against the light.`,
      '',
    );
  }
  writeFileSync(path.join(folder, 'guide.md'), text.join('\n'));
}
