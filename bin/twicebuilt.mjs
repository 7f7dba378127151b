#!/usr/bin/env node
import { existsSync } from 'node:fs';

// In a checkout the bundle may be missing or stale; an installed package carries a finished one.
if (existsSync(new URL('../src', import.meta.url))) {
  const { ensureInstalled, ensureBuilt } = await import('../scripts/lib/fresh.mjs');
  ensureInstalled();
  ensureBuilt();
}
const { main } = await import('../dist/main.js');
process.exitCode = await main(process.argv.slice(2));
