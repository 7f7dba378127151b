import { defineConfig } from 'vitest/config';

/** What `npm test` leaves out for its length. */
export default defineConfig({
  test: { include: ['tests/long/**/*.test.ts'], testTimeout: 600_000, maxWorkers: 2 },
});
