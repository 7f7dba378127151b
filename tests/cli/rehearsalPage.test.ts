import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from './runProgram.ts';

let scratch: string;
let build: string;
beforeAll(async () => {
  scratch = await mkdtemp(path.join(tmpdir(), 'twicebuilt-page-'));
  build = path.join(scratch, 'build');
  await mkdir(build);
  await writeFile(path.join(build, 'guide.md'), '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n\nSolder.\n');
  await writeFile(path.join(build, 'parts.csv'), 'Reference,Quantity,Description\nD1,1,White LED\n');
});
afterAll(async () => {
  await rm(scratch, { recursive: true, force: true });
});

describe('rehearse --page', () => {
  it('writes the page, over an earlier one too, and prints what it prints without', async () => {
    const page = path.join(scratch, 'rehearsal.html');
    for (const _ of [1, 2]) {
      const { stdout, stderr } = runProgram(['rehearse', build, '--page', page]);
      expect(stdout).toContain('Step 1: Fit the lamp');
      expect(stderr).toContain(page);
    }
    expect(await readFile(page, 'utf8')).toContain('White LED');
  });
  it('writes over nothing else, and not among the files of the build', async () => {
    const other = path.join(scratch, 'mine.html');
    await writeFile(other, '<p>mine</p>');
    for (const page of [other, path.join(build, 'rehearsal.html')]) {
      const { status, stdout, stderr } = runProgram(['rehearse', build, '--page', page]);
      expect(status).toBe(2);
      expect(stdout).toBe('');
      expect(stderr).toContain(page);
    }
    expect(await readFile(other, 'utf8')).toBe('<p>mine</p>');
  });
});
