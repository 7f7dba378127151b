import { defineConfig } from 'vitest/config';
import { readerScripts } from './scripts/lib/readerScripts.mjs';

export default defineConfig({
  plugins: [readerScripts()],
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['tests/long/**', 'node_modules/**'],
    testTimeout: 30_000,
    maxWorkers: 2,
  },
});
