import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyDemo, type DemoCopy } from '../demo/demoCopy.ts';
import { runProgram } from './runProgram.ts';

const preload = path.join(import.meta.dirname, 'noNetwork.mjs');
let demo: DemoCopy;
let elsewhere: string;
beforeAll(async () => {
  demo = await copyDemo();
  elsewhere = await mkdtemp(path.join(tmpdir(), 'twicebuilt-net-'));
});
afterAll(async () => {
  await demo.discard();
  await rm(elsewhere, { recursive: true, force: true });
});

describe('the program', () => {
  it('is caught by the guard when it goes out', async () => {
    const probe = path.join(elsewhere, 'probe.mjs');
    const { writeFile } = await import('node:fs/promises');
    await writeFile(probe, "import net from 'node:net';\nnet.connect(9, '127.0.0.1');\n");
    const { spawnSync } = await import('node:child_process');
    expect(spawnSync(process.execPath, ['--import', preload, probe]).status).toBe(97);
  });

  it.each([
    ['adopt', () => ['adopt', demo.root]],
    ['parts', () => ['parts', demo.root]],
    ['pins', () => ['pins', demo.root]],
    ['check', () => ['check', demo.root]],
    ['rehearse', () => ['rehearse', demo.root]],
    ['publish', () => ['publish', demo.root, '--to', path.join(elsewhere, 'guide')]],
  ] as const)('never reaches for the network in %s', (_, args) => {
    const result = runProgram(args(), { preload });
    expect(result.stderr).not.toContain('went out');
    expect(result.status).toBe(0);
  });
});
