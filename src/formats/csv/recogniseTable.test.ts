import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { recogniseTable } from './recogniseTable.ts';

const recognise = (text: string) => {
  const source: SourceText = {
    file: 'a.csv',
    text,
    encoding: 'utf-8',
    bom: false,
    hash: 'h',
    lineStarts: lineStartsOf(text),
  };
  return recogniseTable(source);
};

describe('recogniseTable', () => {
  it('knows a parts list, says where its headers stand and what they mean', () => {
    expect(recognise('Tide lamp\n\nRef,Qty,Value\nR1,1,330\nC1,1,100n\n')).toEqual({
      kind: 'parts',
      headerLine: 3,
      score: expect.closeTo(0.96, 2),
      why: 'columns of a parts list: reference (Ref), quantity (Qty), value (Value)',
    });
    expect(recognise('Thing;How many\nscrew;4\n').kind).toBe('parts');
    expect(recognise('Part,Amount\nESP32 board,1\nWire,2 m\n').kind).toBe('parts');
  });
  it('knows a wiring table by the pins in its cells', () => {
    expect(recognise('from,to,net\nU1.D5,R1.1,DATA\nR1.2,H1.IN,\n')).toMatchObject({
      kind: 'wiring',
      headerLine: 1,
      score: 1,
      why: 'rows that join two pins (from, to)',
    });
    expect(recognise('From Part,From Pin,To Part,To Pin\nU1,5V,H1,VCC\n').kind).toBe('wiring');
    expect(recognise('from,to,when\nInes,Bo,Monday\nBo,Ines,Friday\n').kind).toBe('other');
  });
  it('knows a list of tools, even where its columns could be those of parts', () => {
    expect(recognise('name,needed,note\nsoldering iron,yes,\nmultimeter,nice to have,\n').kind).toBe('tools');
    expect(recognise('Tool,Quantity,Link\nfile,2,\n').kind).toBe('tools');
  });
  it.each([
    [
      'a file for the machine that places parts',
      'Designator,Val,Package,Mid X,Mid Y,Rotation,Layer\nR1,10k,0603,1.2,3.4,90,top\n',
    ],
    ['an address list', 'name,email,note\nInes,ines@lintel.example,editor\n'],
    ['a list of rights', 'what,whose,permission,scope,expiry\nphoto,Bo,yes,web,2027\n'],
    ['a log of readings', 'time,value\n12:00,3.31\n12:01,3.30\n'],
    ['a bill of expenses', 'date,what,paid\n2026-03-01,Postage,4.20\n'],
    ['prose', 'Dear reader, this is a letter, with commas.\nIt goes on, and on.\n'],
    ['nothing', ''],
  ])('takes %s for another table', (_, text) => {
    expect(recognise(text)).toMatchObject({ kind: 'other', headerLine: 0, score: 0 });
  });
});
