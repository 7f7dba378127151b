import { describe, expect, it } from 'vitest';
import { judge } from '#checks/judge.ts';
import { judgedFrom } from '../checks/judgedFrom.ts';
import { projectNames, readProject } from './readProject.ts';

describe('a build that was made with care', () => {
  it.each(projectNames)('%s keeps nobody waiting and can be built as told', async (name) => {
    const { findings, verdict } = judge(await judgedFrom(Object.fromEntries(readProject(name))), { for: 'publisher' });
    const told = findings
      .filter(({ weight }) => weight !== 'tidy')
      .map(({ weight, check, message }) => `${weight} ${check}: ${message}`);
    expect(told).toEqual([]);
    expect(verdict).toBe('buildable');
  });
});
