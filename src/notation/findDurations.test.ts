import { describe, expect, it } from 'vitest';
import { findDurations } from './findDurations.ts';

const read = (text: string) =>
  findDurations(text).map(({ from, to, least, most }) => [text.slice(from, to), least, most] as const);

describe('findDurations', () => {
  it.each([
    ['fourteen hours', 840],
    ['twenty-five minutes', 25],
    ['Thirty five minutes', 35],
    ['an hour', 60],
    ['half an hour', 30],
    ['a half hour', 30],
    ['a quarter of an hour', 15],
    ['three quarters of an hour', 45],
    ['an hour and a half', 90],
    ['four hours and a half', 270],
    ['two and a half hours', 150],
    ['2½ h', 150],
    ['2.5 hours', 150],
    ['1,5 h', 90],
    ['one hour and 25 minutes', 85],
    ['1 h 20 min', 80],
    ['1h20', 80],
    ['1 hour, 20 minutes', 80],
    ['90-minute', 90],
    ['two-hour', 120],
    ['a couple of hours', 120],
    ['45 min', 45],
  ])('reads %s', (words, minutes) => {
    expect(read(`Reckon with ${words}, no more.`)).toEqual([[words, minutes, minutes]]);
  });

  it.each([
    ['4 to 5 hours', 240, 300],
    ['2–3 h', 120, 180],
    ['two or three hours', 120, 180],
    ['two and a half to three hours', 150, 180],
    ['half an hour to an hour', 30, 60],
    ['between 20 and 30 minutes', 20, 30],
    ['20 minutes to an hour', 20, 60],
  ])('reads the range %s', (words, least, most) => {
    expect(read(`It takes ${words}.`)).toEqual([[words, least, most]]);
  });

  it('reads several in one text, each for itself', () => {
    expect(read('Four hours for you and one hour for a friend')).toEqual([
      ['Four hours', 240, 240],
      ['one hour', 60, 60],
    ]);
  });

  it('tells what a time is rounded to', () => {
    expect(
      ['three hours', '90 minutes', '2.5 h', '45 min', '40 min', '25 min', '1 h 25 min', '7 min'].map(
        (text) => findDurations(text)[0]?.grain,
      ),
    ).toEqual([60, 30, 30, 15, 10, 5, 5, 1]);
  });

  it.each([
    '2 m wire',
    'R12 h',
    'the hour',
    '20 minerals',
    '1.2.3 h',
    'two evenings',
    'version 1,000 h',
    'someone hour',
  ])('reads no time in “%s”', (text) => {
    expect(read(text)).toEqual([]);
  });
});
