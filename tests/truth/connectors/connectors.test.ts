import { expect, it } from 'vitest';
import table from '../../../src/checks/knowledge/connectors.json';
import names from './footprintNames.json';

it('gives each series the pitch that the name of its footprint gives', () => {
  const pitches = names.map((name) => {
    const [, series = '', pitch = ''] = /^JST_([A-Z]+)_.*_P([\d.]+)mm_/.exec(name) ?? [];
    return [series, Number(pitch)] as const;
  });
  expect(Object.fromEntries(pitches)).toEqual(table.jstPitch);
});
