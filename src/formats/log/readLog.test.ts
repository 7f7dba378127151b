import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { readLog } from './readLog.ts';

function log(text: string): SourceText {
  return { file: 'log.md', text, encoding: 'utf-8', bom: false, hash: '', lineStarts: lineStartsOf(text) };
}

describe('readLog', () => {
  it('opens a note at each dated heading and leaves the title out', () => {
    const { notes } = readLog(
      log('# Bench log\n\n## 2026-09-26 19:10\n\nSockets in.\n\n## 2026-09-27\n\nThe ring works.\n'),
    );
    expect(notes.map(({ at, text }) => [at, text])).toEqual([
      ['2026-09-26T19:10', 'Sockets in.'],
      ['2026-09-27', 'The ring works.'],
    ]);
  });

  it('takes what follows a date on its line as text', () => {
    const { notes } = readLog(log('- 2026-05-01: cut the case\n- **2 May 2026** – glued it\n'));
    expect(notes.map(({ at, text }) => [at, text])).toEqual([
      ['2026-05-01', 'cut the case'],
      ['2026-05-02', 'glued it'],
    ]);
  });

  it('lets plain dated lines follow each other, but not a date within a paragraph', () => {
    const plain = readLog(log('2026-05-01 cut\nstill cutting\n2026-05-02 glued\n')).notes;
    expect(plain.map(({ text }) => text)).toEqual(['cut\nstill cutting', 'glued']);
    const within = readLog(log('## 2026-05-03\n\nThe order of\n2026-04-01 came today.\n')).notes;
    expect(within).toHaveLength(1);
  });

  it('reads the labelled lines, bold or in a list, and joins what is said twice', () => {
    const { notes } = readLog(
      log(
        '## 2026-05-01\n\nmistake: D1 reversed\n- **Cause:** the stripe was hidden\nreading: 0.2 V\nreading: 0.3 V\nstep: Fit D1\n',
      ),
    );
    expect(notes[0]).toMatchObject({
      mistake: 'D1 reversed',
      cause: 'the stripe was hidden',
      remedy: null,
      reading: '0.2 V\n0.3 V',
      step: 'Fit D1',
      text: '',
    });
  });

  it('keeps an undated heading with something under it as an undated note', () => {
    const { notes } = readLog(log('## The first evening\n\nNothing fits.\n'));
    expect(notes.map(({ at, text }) => [at, text])).toEqual([[null, 'The first evening\n\nNothing fits.']]);
  });

  it('reads no dates and no labels inside code', () => {
    const { notes } = readLog(log('## 2026-05-01\n\n```\n2026-05-02 boot\nmistake: none\n```\n'));
    expect(notes).toHaveLength(1);
    expect(notes[0]?.mistake).toBeNull();
  });

  it('says where a date is none of the calendar', () => {
    const { notes, problems } = readLog(log('## 2026-13-40\n\nSoldered.\n'));
    expect(notes[0]?.at).toBeNull();
    expect(problems.map(({ place }) => place.kind === 'text' && [place.line, place.quote])).toEqual([
      [1, '## 2026-13-40'],
    ]);
  });

  it('places each note by its own words, whatever the line ends', () => {
    const source = log('# Log\r\n\r\n## 2026-05-01\r\n\r\nOne.\r\n\r\n## 2026-05-02\r\n\r\nTwo.\r\n');
    expect(readLog(source).notes.map(({ place }) => [place.line, place.quote])).toEqual([
      [3, '## 2026-05-01\r\n\r\nOne.'],
      [7, '## 2026-05-02\r\n\r\nTwo.'],
    ]);
  });

  it('never throws, and quotes what stands at each span', () => {
    const piece = fc.constantFrom(
      '## 2026-05-01',
      '\r\n',
      '\n',
      '- ',
      'mistake: x',
      '```',
      '# ',
      '31.02.2026 ',
      '\u00e9',
      '🔧',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(piece, fc.string()), { maxLength: 30 }), (pieces) => {
        const source = log(pieces.join(''));
        const { notes, problems } = readLog(source);
        for (const place of [...notes.map((note) => note.place), ...problems.map((problem) => problem.place)]) {
          if (place.kind === 'text') expect(source.text.slice(...place.span)).toBe(place.quote);
        }
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});
