import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { factLabels, type Section } from '#core/step.ts';
import { applyEdit, undoEdit } from '../edit/applyEdit.ts';
import { editFacts, type NewFact } from './editFacts.ts';
import { readGuide } from './readGuide.ts';

function source(text: string): SourceText {
  return { file: 'g.md', text, encoding: 'utf-8', bom: false, hash: 'base', lineStarts: lineStartsOf(text) };
}

function sectionsOf(text: string): readonly Section[] {
  return readGuide([source(text)], { fileExists: () => null, stepDepth: 2 }).instructions.sections;
}

function edited(text: string, facts: readonly NewFact[], at = 0): string {
  const section = sectionsOf(text)[at];
  if (section === undefined) throw new Error('no section');
  const before = source(text);
  const applied = applyEdit(before, new TextEncoder().encode(text), editFacts(before, section, facts));
  if (!applied.ok) throw new Error(applied.problem.message);
  const undone = undoEdit({ ...source(applied.text), hash: 'after' }, applied.bytes, applied.inverse);
  expect(undone.ok && undone.text).toBe(text);
  return applied.text;
}

const parts: NewFact = { label: 'parts', value: 'R1, R2' };
const time: NewFact = { label: 'time', value: '5 min' };

describe('editFacts', () => {
  it('adds to the facts of a step, below all lines of the last one', () => {
    expect(edited('## Fit\n* Tools: iron\n* Warning: hot\nand sharp\n\nText.\n', [parts])).toBe(
      '## Fit\n* Tools: iron\n* Warning: hot\nand sharp\n* Parts: R1, R2\n\nText.\n',
    );
  });

  it('makes a new list right under the heading, parted from the text', () => {
    expect(edited('## Fit\nText.\n', [parts, time])).toBe('## Fit\n- Parts: R1, R2\n- Time: 5 min\n\nText.\n');
    expect(edited('## Fit\n\nText.\n', [parts])).toBe('## Fit\n\n- Parts: R1, R2\n\nText.\n');
    expect(edited('Fit\n---\nText.\n', [parts])).toBe('Fit\n---\n- Parts: R1, R2\n\nText.\n');
  });

  it('uses the line ends of the file, and its bullet unless the new list would run into one below', () => {
    expect(edited('## Fit\r\nText.\r\n\r\n## End\r\n\r\n* a\r\n', [parts])).toBe(
      '## Fit\r\n* Parts: R1, R2\r\n\r\nText.\r\n\r\n## End\r\n\r\n* a\r\n',
    );
    expect(edited('## Fit\n\n- Take R1.\n- Solder it.\n', [parts])).toBe(
      '## Fit\n\n* Parts: R1, R2\n\n- Take R1.\n- Solder it.\n',
    );
  });

  it('keeps an indented paragraph out of the new list', () => {
    expect(edited('## Fit\n\n  Text.\n', [parts])).toBe('## Fit\n\n-  Parts: R1, R2\n\n  Text.\n');
  });

  it('ends a file that had no line end', () => {
    expect(edited('## Fit', [parts])).toBe('## Fit\n- Parts: R1, R2');
    expect(edited('## Fit\n- Tools: iron', [parts])).toBe('## Fit\n- Tools: iron\n- Parts: R1, R2');
  });

  it('writes nothing where there is nothing to add, and one line where a value has several', () => {
    expect(edited('## Fit\n', [])).toBe('## Fit\n');
    expect(edited('## Fit\n', [{ label: 'expect', value: 'a\n  b ' }])).toBe('## Fit\n- Expect: a b\n');
  });

  it('is read back as the old facts and the new ones, with all else as it was', () => {
    const line = fc.constantFrom(
      'Text.',
      '',
      '- Tools: iron',
      '- plain',
      '* star',
      '1. one',
      '  more',
      '> quote',
      '```',
      '### Sub',
      '## Next',
      '***',
    );
    const fact = fc.record({
      label: fc.constantFrom(...factLabels),
      value: fc.constantFrom('R1', 'a: b', '5 min', '__x__'),
    });
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 10 }),
        fc.array(fact, { minLength: 1, maxLength: 3 }),
        fc.constantFrom('\n', '\r\n'),
        (lines, facts, end) => {
          const text = ['## Fit it', ...lines].join(end);
          const before = sectionsOf(text);
          const after = sectionsOf(edited(text, facts));
          const first = before[0];
          const kept = first?.facts.map(({ label, value }) => ({ label, value })) ?? [];
          expect(after[0]?.facts.map(({ label, value }) => ({ label, value }))).toEqual([...kept, ...facts]);
          expect(after[0]?.blocks.map(({ place }) => place.quote)).toEqual(
            first?.blocks.map(({ place }) => place.quote),
          );
          expect(after.slice(1).map(({ heading, signature }) => [heading, signature])).toEqual(
            before.slice(1).map(({ heading, signature }) => [heading, signature]),
          );
        },
      ),
      { seed: 3, numRuns: 150 },
    );
  });
});
