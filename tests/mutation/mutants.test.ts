import { describe, expect, it } from 'vitest';
import { evaluateMutants } from './evaluateMutants.ts';
import { allMutants } from './mutantsOf.ts';
import { openProject } from './project.ts';
import { figuresOf } from './reportOf.ts';

const all = allMutants();

describe('mutants', () => {
  it('are many, of every build, each of its own', () => {
    expect(all.length).toBeGreaterThanOrEqual(600);
    expect(new Set(all.map(({ build }) => build)).size).toBe(9);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
  });
  it('differ from the build that they are made of', () => {
    for (const { build, changes } of all) {
      const { files } = openProject(build);
      expect([...changes].some(([file, content]) => files.get(file) !== content)).toBe(true);
    }
  });
  it('point at lines that are there', () => {
    for (const { id, build, changes, consequence } of all) {
      const { files } = openProject(build);
      for (const { file, line } of consequence.at) {
        const content = changes.has(file) ? changes.get(file) : files.get(file);
        expect(typeof content === 'string' && line <= content.split('\n').length, `${id} at ${file}:${line}`).toBe(
          true,
        );
      }
    }
  });
  it('set off little else that halts', { timeout: 120_000 }, async () => {
    const { share, others } = figuresOf(await evaluateMutants(all.filter((_, index) => index % 20 === 3)));
    expect(others).toBeLessThanOrEqual(0.2);
    expect(share).toBeGreaterThanOrEqual(0.95);
  });
});
