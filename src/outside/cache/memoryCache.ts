import type { CachePort } from '#app/ports.ts';

/** A cache that is gone with the process. */
export function memoryCache(): CachePort {
  const entries = new Map<string, Uint8Array>();
  return {
    async get(key) {
      const data = entries.get(key);
      return data ? new Uint8Array(data) : null;
    },
    async put(key, data) {
      entries.set(key, new Uint8Array(data));
    },
  };
}
