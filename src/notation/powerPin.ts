import table from './powerPins.json';

/** What a supply pin carries: ground, a rail of stated volts, a supply of unstated volts, or a bare pole. */
export type PowerPin =
  | { readonly is: 'ground' | 'other-ground' | 'supply' | 'plus' | 'minus' }
  | { readonly is: 'rail'; readonly volts: number; readonly text: string };

/** Reads the name of a supply pin in plain form and upper case; null where it names none. `GND2` is a ground. */
export function powerPinOf(name: string): PowerPin | null {
  const bare = name.replace(/ /gu, '');
  const unnumbered = bare.replace(/^([A-Z]{3,})[._-]?\d{1,2}$/u, '$1');
  if (table.ground.includes(bare) || table.ground.includes(unnumbered)) return { is: 'ground' };
  if (table.otherGround.includes(unnumbered)) return { is: 'other-ground' };
  if (table.supply.includes(bare)) return { is: 'supply' };
  if (table.plus.includes(bare)) return { is: 'plus' };
  if (table.minus.includes(bare)) return { is: 'minus' };
  const rail = /^\+?(\d{1,2})(?:[.,](\d{1,2})V?|V(\d{0,2}))$/u.exec(bare);
  if (rail === null || !bare.includes('V')) return null;
  const volts = Number(`${rail[1] ?? ''}.${rail[2] ?? rail[3] ?? ''}0`);
  return volts === 0 ? { is: 'ground' } : { is: 'rail', volts, text: bare };
}
