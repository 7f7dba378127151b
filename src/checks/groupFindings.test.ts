import { describe, expect, it } from 'vitest';
import type { Finding } from '#core/finding.ts';
import { groupFindings } from './groupFindings.ts';

const finding = (check: string, id: string, weight: Finding['weight'] = 'slows'): Finding => ({
  id,
  check,
  weight,
  audience: 'builder',
  subjects: [],
  sides: [],
  message: '',
  consequence: '',
  remedy: '',
  mend: null,
  lapsed: null,
});
const ids = (findings: readonly Finding[]) =>
  groupFindings(findings).map((group) => group.findings.map(({ id }) => id));

describe('groupFindings', () => {
  it('leaves three of a kind apart', () => {
    expect(ids([finding('a', '1'), finding('a', '2'), finding('b', '3'), finding('a', '4')])).toEqual([
      ['1'],
      ['2'],
      ['3'],
      ['4'],
    ]);
  });
  it('takes four of a kind together, in the place of the first, and no other weight with them', () => {
    const four = ['1', '3', '4', '6'].map((id) => finding('a', id));
    const [first, ...rest] = four;
    if (first === undefined) throw new Error('four findings');
    expect(ids([first, finding('b', '2'), ...rest, finding('a', '5', 'tidy')])).toEqual([
      ['1', '3', '4', '6'],
      ['2'],
      ['5'],
    ]);
  });
});
