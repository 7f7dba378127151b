import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edit } from '#core/edit.ts';
import type { Encoding, SourceText } from '#core/sourceText.ts';
import { applyEdit, undoEdit } from '#formats/edit/applyEdit.ts';
import { decodeText } from '#formats/text/decodeText.ts';
import { encodeText } from '#formats/text/encodeText.ts';
import { runs } from '../runs.ts';

// Files of every kind that an edit is made in. {N} is an end of line, and differs from place to place in mixed files.
const files: Readonly<Record<string, string>> = {
  'parts.csv': 'Ref,Value;Note{N}"R1, R2","4k7 ""±1 %""",odd "quotes" here{N}U1,"two{N}lines",{N},,{N}C1,10µF,°C…’{N}',
  'twicebuilt.yaml':
    '# our lamp{N}format:   1{N}title: "Tide: lamp…"  # {N}authors:{N}  - Ines Holm{N}{N}  # - Bo{N}roles: {guide: guide.md}{N}',
  'guide.md':
    '---{N}title: Lamp{N}---{N}{N}# Wire the ring{N}- Parts: H1, R1{N}- Measure: U1.5V – U1.GND > 1 k{N}{N}Take `D[0]` *once*.  {N}| a | b |{N}|---|---|{N}',
  'main.cpp':
    '#include <Wire.h>{N}// ½ turn – 5 µs{N}const int RING = 5; /* pin */{N}const char* s = "a\\"b\\\\";{N}void setup() {{N}\tpinMode(RING, OUTPUT);{N}}{N}',
  'history.jsonl':
    '{"key":"part:R1","digest":"0a","firstSeen":"2026-03-01"}{N}{"key":"step:é","digest":"\\u00e9","firstSeen":"2026-03-02"}{N}',
};
const beyond1252 = '🔧Ω漢→';
const encodings: readonly { encoding: Encoding; bom: boolean }[] = [
  { encoding: 'utf-8', bom: false },
  { encoding: 'utf-8', bom: true },
  { encoding: 'utf-16le', bom: true },
  { encoding: 'utf-16be', bom: true },
  { encoding: 'utf-16le', bom: false },
  { encoding: 'utf-16be', bom: false },
  { encoding: 'windows-1252', bom: false },
];
const lineEnds = [['\n'], ['\r\n'], ['\r'], ['\n', '\r\n', '\r']];

interface Case {
  readonly file: string;
  readonly form: (typeof encodings)[number];
  readonly ends: readonly string[];
  readonly changes: readonly { at: number; length: number; text: string }[];
}

const words = fc.string({
  unit: fc.constantFrom(
    'a',
    'R1',
    ',',
    '"',
    ' ',
    '\n',
    '\r\n',
    '\r',
    '#',
    ':',
    '\t',
    'é',
    '€',
    '°',
    '🔧',
    'Ω',
    '漢',
    '\ud83d',
    '\u0000',
    'Ã©',
  ),
  maxLength: 8,
});
const cases: fc.Arbitrary<Case> = fc.record({
  file: fc.constantFrom(...Object.keys(files)),
  form: fc.constantFrom(...encodings),
  ends: fc.constantFrom(...lineEnds),
  changes: fc.array(fc.record({ at: fc.nat(400), length: fc.nat(12), text: words }), { minLength: 1, maxLength: 4 }),
});

function textOf({ file, form, ends }: Case): string {
  let line = 0;
  const text = (files[file] ?? '').replaceAll('{N}', () => ends[line++ % ends.length] ?? '\n');
  return form.encoding === 'windows-1252' ? text : text.replaceAll('…', beyond1252);
}

function read(file: string, bytes: Uint8Array, hash: string): SourceText {
  const decoded = decodeText(file, bytes, hash);
  if (!decoded.ok) throw new Error(decoded.problem.message);
  return decoded.source;
}

/** An edit with spans anywhere: most are in order, some overlap, leave the text or cut a character. */
function editOf({ file, changes }: Case, length: number): Edit {
  const spans = changes.map(({ at, length: size, text }) => ({
    span: [at, Math.min(at + size, length + 2)] as const,
    text,
  }));
  const inText = spans.filter(({ span }) => span[0] <= length).sort((a, b) => a.span[0] - b.span[0]);
  return { file, base: 'before', changes: inText, why: 'a random edit' };
}

/** Bytes of a stretch of the text, by an encoder of its own for each side of the comparison. */
function lengthInBytes(source: SourceText, text: string): number {
  switch (source.encoding) {
    case 'utf-8':
      return Buffer.byteLength(text, 'utf8');
    case 'windows-1252':
      return text.length;
    default:
      return Buffer.byteLength(text, 'utf16le');
  }
}

/** The stretches of bytes that no span covers, by the text alone: 'kept' bytes of the file before and after. */
function outside(source: SourceText, bytes: Uint8Array, spans: readonly (readonly [number, number])[]): string[] {
  const mark = source.bom ? (source.encoding === 'utf-8' ? 3 : 2) : 0;
  const offset = (unit: number) => mark + lengthInBytes(source, source.text.slice(0, unit));
  const edges = [0, ...spans.flatMap(([start, end]) => [offset(start), offset(end)]), bytes.length];
  const kept: string[] = [];
  for (let i = 0; i < edges.length; i += 2) kept.push(hex(bytes.subarray(edges[i], edges[i + 1])));
  return kept;
}

function hex(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('hex');
}

describe('two thousand random edits', () => {
  const counts = { applied: 0, refused: 0, pairs: new Set<string>() };

  it('leave every byte outside their spans, can be taken back, and leave the file alone when refused', () => {
    fc.assert(
      fc.property(cases, (each) => {
        const bytes = encodeText(each.form, textOf(each));
        if (bytes === null) throw new Error('the sample cannot be written in its encoding');
        const before = read(each.file, bytes, 'before');
        expect(before.encoding).toBe(each.form.encoding);
        const copy = bytes.slice();
        const edit = editOf(each, before.text.length);
        const applied = applyEdit(before, bytes, edit);
        expect(hex(bytes)).toBe(hex(copy));
        if (!applied.ok) {
          counts.refused++;
          expect(applied.problem.message).not.toBe('');
          return;
        }
        counts.applied++;
        counts.pairs.add(`${each.file} ${each.form.encoding} ${each.form.bom}`);
        const after = { ...read(each.file, applied.bytes, 'after'), encoding: before.encoding, bom: before.bom };
        const spans = edit.changes.map(({ span }) => span);
        const newSpans = applied.inverse.changes.map(({ span }) => span);
        expect(outside(after, applied.bytes, newSpans)).toEqual(outside(before, bytes, spans));
        expect(newSpans.map((span) => after.text.slice(...span))).toEqual(edit.changes.map(({ text }) => text));
        const undone = undoEdit(read(each.file, applied.bytes, 'after'), applied.bytes, applied.inverse);
        expect(undone.ok && hex(undone.bytes)).toBe(hex(copy));
      }),
      { numRuns: runs(4000), seed: 20_26 },
    );
  });

  it('were not all refused, and reached every kind of file in every encoding', () => {
    expect(counts.applied).toBeGreaterThan(2000);
    expect(counts.refused).toBeGreaterThan(300);
    expect(counts.pairs.size).toBe(Object.keys(files).length * encodings.length);
  });
});
