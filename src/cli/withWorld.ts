import { readFileSync } from 'node:fs';
import type { World } from '#app/ports.ts';
import { openWorld } from '#outside/openWorld.ts';
import { openProgress } from './progress.ts';

/** Runs a use case with the real world around it, and clears the progress line afterwards. */
export async function withWorld<T>(work: (world: World) => Promise<T>): Promise<T> {
  const progress = openProgress();
  try {
    return await work(openWorld({ progress, program: programStamp() }));
  } finally {
    progress.close();
  }
}

/** What the program was built from, noted beside it when it was built. */
function programStamp(): string | null {
  try {
    return readFileSync(new URL('.built-from', import.meta.url), 'utf8');
  } catch {
    return null;
  }
}

/** Writes one JSON document to stdout. */
export function printJson(document: Record<string, unknown>): void {
  process.stdout.write(`${JSON.stringify(document, null, 2)}\n`);
}
