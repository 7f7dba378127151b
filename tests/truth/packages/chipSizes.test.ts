import { describe, expect, it } from 'vitest';
import table from '../../../src/checks/knowledge/chipSizes.json';
import names from './footprintNames.json';

const metricOf = table.metricOf as Readonly<Record<string, string>>;

describe('chip sizes in inch and in metric codes', () => {
  it('pairs every code as the names of footprints do, and holds no others', () => {
    const pairs = names.map((name) => /_(\d+)_(\d+)Metric$/.exec(name)?.slice(1, 3) ?? []);
    expect(Object.fromEntries(pairs)).toEqual(metricOf);
  });
  it.each(Object.entries(metricOf).filter(([inch]) => inch !== '01005'))(
    '%s hundredths of an inch and %s tenths of a millimetre are one body',
    (inch, metric) => {
      const halves = (code: string) => [Number(code.slice(0, 2)), Number(code.slice(2))] as const;
      const [inchLength, inchWidth] = halves(inch);
      const [length, width] = halves(metric);
      expect(Math.abs((inchLength * 0.254) / (length / 10) - 1)).toBeLessThan(0.2);
      expect(Math.abs((inchWidth * 0.254) / (width / 10) - 1)).toBeLessThan(0.2);
    },
  );
});
