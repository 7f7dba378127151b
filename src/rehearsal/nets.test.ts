import { describe, expect, it } from 'vitest';
import { netsOf } from './nets.ts';

const end = (text: string) => ({ ref: text.split('.')[0] ?? '', pin: text.split('.')[1] ?? '' });
const wire = (from: string, to: string, net: string | null = null) => ({ from: end(from), to: end(to), net });

describe('netsOf', () => {
  it('joins ends through any chain of wires', () => {
    const nets = netsOf([wire('A1.1', 'B1.1'), wire('B1.1', 'C1.1'), wire('D1.1', 'E1.1')]);
    expect(nets.joined(end('A1.1'), end('C1.1'))).toBe(true);
    expect(nets.joined(end('A1.1'), end('D1.1'))).toBe(false);
  });
  it('joins what lies on nets of one name, however it is written', () => {
    const nets = netsOf([wire('A1.1', 'B1.1', 'Gnd'), wire('C1.1', 'D1.1', 'GND ')]);
    expect(nets.joined(end('A1.1'), end('D1.1'))).toBe(true);
    expect(nets.endsOn(end('A1.1'))).toHaveLength(4);
  });
  it('does not conduct through a part', () => {
    const nets = netsOf([wire('U1.5', 'R1.1'), wire('R1.2', 'H1.IN')]);
    expect(nets.joined(end('U1.5'), end('H1.IN'))).toBe(false);
  });
  it('takes the numbered grounds of one part for one node, and its signals not', () => {
    const nets = netsOf([
      wire('U1.GND1', 'A1.1'),
      wire('U1.GND2', 'B1.1'),
      wire('U1.IO1', 'C1.1'),
      wire('U1.IO2', 'D1.1'),
    ]);
    expect(nets.joined(end('A1.1'), end('B1.1'))).toBe(true);
    expect(nets.joined(end('C1.1'), end('D1.1'))).toBe(false);
  });
});
