import { describe, expect, it } from 'vitest';
import { lineStartsOf, type SourceText } from '#core/sourceText.ts';
import { readChoices } from './readChoices.ts';

function source(text: string): SourceText {
  return { file: 'shots.yaml', text, encoding: 'utf-8', bom: false, hash: '', lineStarts: lineStartsOf(text) };
}

describe('readChoices', () => {
  it('reads what is said of a shot', () => {
    const { choices, problems } = readChoices(
      source(
        [
          'format: 1',
          'shots:',
          '  0123456789ab:',
          '    path: photos/one.jpg',
          '    chosen: no',
          '    alt: The lid, upside down',
          '    steps: [fit-the-lid]',
          '    callouts:',
          '      - ring: [0.25, 0.5, 0.1, 0.05]',
          '        words: the notch',
          '      - arrow: [0, 0, 1, 1]',
          '      - box: [0.1, 0.2, 0.3, 0.4]',
          '      - number: [0.5, 0.5]',
          '        words: "2"',
          '',
        ].join('\n'),
      ),
    );
    expect(problems).toEqual([]);
    expect(choices).toHaveLength(1);
    expect(choices[0]).toMatchObject({
      hash: '0123456789ab',
      path: 'photos/one.jpg',
      chosen: false,
      alt: 'The lid, upside down',
      caption: null,
      steps: ['fit-the-lid'],
      callouts: [
        { kind: 'ring', centre: { x: 0.25, y: 0.5 }, half: { x: 0.1, y: 0.05 }, words: 'the notch' },
        { kind: 'arrow', from: { x: 0, y: 0 }, to: { x: 1, y: 1 }, words: null },
        { kind: 'box', corner: { x: 0.1, y: 0.2 }, size: { x: 0.3, y: 0.4 }, words: null },
        { kind: 'number', at: { x: 0.5, y: 0.5 }, words: '2' },
      ],
    });
  });

  it('says where a mark lies outside its picture, and reads the rest', () => {
    const { choices, problems } = readChoices(
      source(
        'shots:\n  0123456789ab:\n    callouts:\n      - ring: [1.2, 0, 0, 0]\n      - label: [0.1, 0.1]\n        words: plus\n',
      ),
    );
    expect(choices[0]?.callouts).toEqual([{ kind: 'label', at: { x: 0.1, y: 0.1 }, words: 'plus' }]);
    expect(problems.map(({ place }) => place.kind === 'text' && place.line)).toEqual([4]);
  });

  it('wants a hash as the key, and entries under shots', () => {
    expect(readChoices(source('shots:\n  IMG_1.jpg:\n    alt: x\n')).problems).toHaveLength(1);
    expect(readChoices(source('IMG_1.jpg: x\n')).problems).toHaveLength(1);
    expect(readChoices(source('')).problems).toEqual([]);
  });
});
