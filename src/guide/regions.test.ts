import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Section } from '#core/step.ts';
import { assembled, paragraph, section } from '../../tests/site/smallBuild.ts';
import { composeGuide } from './composeGuide.ts';
import { everyBlock } from './everyBlock.ts';
import { regionsOf } from './regions.ts';

const words = paragraph('Words.');
const ids = (sections: readonly Section[]) => sections.map(({ id }) => id);

const anySections = fc
  .array(
    fc.record({
      role: fc.constantFrom('step', 'prose', 'prose', 'parts', 'tools', 'title'),
      depth: fc.integer({ min: 1, max: 6 }),
    } as const),
    {
      maxLength: 14,
    },
  )
  .map((sketches) => sketches.map(({ role, depth }, i) => section(`s${i}`, role, depth, words)));

describe('regionsOf', () => {
  test('gives every section that says something to one region, in its order', () => {
    fc.assert(
      fc.property(anySections, (sections) => {
        const { title, before, parts, tools, work, after } = regionsOf(sections);
        const all = [...(title ? [title] : []), ...before, ...parts, ...tools, ...work, ...after];
        expect(ids(all).sort()).toEqual(ids(sections).sort());
        const running = ids([...before, ...work, ...after]);
        expect(running).toEqual(ids(sections).filter((id) => running.includes(id)));
      }),
      { seed: 11 },
    );
  });

  test('takes the headings over the first step into the work, and what hangs under the last', () => {
    const sections = [
      section('history', 'prose', 2, words),
      section('stage-one', 'prose', 2, words),
      section('cut', 'step', 3),
      section('stage-two', 'prose', 2, words),
      section('glue', 'step', 3),
      section('a-hint', 'prose', 4, words),
      section('use', 'prose', 2, words),
    ];
    const { before, work, after } = regionsOf(sections);
    expect(ids(before)).toEqual(['history']);
    expect(ids(work)).toEqual(['stage-one', 'cut', 'stage-two', 'glue', 'a-hint']);
    expect(ids(after)).toEqual(['use']);
  });

  test('drops one bare heading over all steps, and headings over nothing', () => {
    const sections = [
      section('steps', 'prose', 2),
      section('cut', 'step', 3),
      section('glue', 'step', 3),
      section('empty', 'prose', 2),
    ];
    const { work, after } = regionsOf(sections);
    expect(ids(work)).toEqual(['cut', 'glue']);
    expect(after).toEqual([]);
  });

  test('keeps bare headings that tell stages apart', () => {
    const sections = [
      section('one', 'prose', 2),
      section('cut', 'step', 3),
      section('two', 'prose', 2),
      section('glue', 'step', 3),
    ];
    expect(ids(regionsOf(sections).work)).toEqual(['one', 'cut', 'two', 'glue']);
  });
});

describe('ranks of headings', () => {
  test('never skip one, whatever the maker’s own ranks are', () => {
    fc.assert(
      fc.property(anySections, (sections) => {
        const guide = composeGuide(assembled({ sections }), { code: [] });
        let before = 2;
        for (const block of everyBlock(guide)) {
          if (block.kind === 'work') before = 2;
          if (block.kind !== 'step' && (block.kind !== 'section' || block.heading === null)) continue;
          expect(block.level).toBeGreaterThanOrEqual(2);
          expect(block.level).toBeLessThanOrEqual(Math.min(before + 1, 6));
          before = block.level;
        }
      }),
      { seed: 13 },
    );
  });
});
