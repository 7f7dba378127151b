import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['tests/long/**', 'node_modules/**'],
    testTimeout: 30_000,
    maxWorkers: 2,
  },
});
