import { expect, it } from 'vitest';
import { parseEia96 } from './eia96.ts';

it.each(['', 'A', '1A', '01', '01a', '01G', '001A', '01AA'])('reads no three characters in “%s”', (text) => {
  expect(parseEia96(text)).toBeNull();
});
it('keeps the code as written', () => {
  expect(parseEia96(' 68X ')).toEqual({ kind: 'resistance', si: 49.9, text: '68X' });
});
