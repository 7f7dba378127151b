import { defineConfig } from 'vitest/config';
import { readerScripts } from './scripts/lib/readerScripts.mjs';

/** What `npm test` leaves out for its length, and its random tests at twenty times the runs. */
export default defineConfig({
  plugins: [readerScripts()],
  test: {
    include: ['tests/long/**/*.test.ts', 'tests/bytes/**/*.test.ts', 'tests/checks/damagedLamp.test.ts'],
    env: { TWICEBUILT_LONG: '1' },
    testTimeout: 1_200_000,
    hookTimeout: 1_200_000,
    maxWorkers: 2,
  },
});
