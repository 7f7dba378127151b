import type { CachePort } from '#app/ports.ts';

/** A cache that is gone with the process. */
export function memoryCache(): CachePort {
  const entries = new Map<string, Uint8Array>();
  return {
    get: async (key) => entries.get(key)?.slice() ?? null,
    async put(key, data) {
      entries.set(key, data.slice());
    },
  };
}
