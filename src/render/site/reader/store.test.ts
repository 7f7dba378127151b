import { describe, expect, it } from 'vitest';
import { type KeyedStorage, openTicks, ownStorage } from './store.ts';

/** Storage as browsers have it (HTML, section 12.2), in memory. */
function storageOf(refuses: () => boolean = () => false): KeyedStorage {
  const kept = new Map<string, string>();
  const guarded = <T>(work: () => T): T => {
    if (refuses()) throw new DOMException('full', 'QuotaExceededError');
    return work();
  };
  return {
    get length() {
      return kept.size;
    },
    key: (i) => [...kept.keys()][i] ?? null,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => guarded(() => kept.set(key, value)),
    removeItem: (key) => guarded(() => kept.delete(key)),
  };
}

describe('openTicks', () => {
  it('is read back by another page of the same guide, and by no other guide', () => {
    const storage = storageOf();
    openTicks('night-light', storage).set('part-R1', true);
    expect(openTicks('night-light', storage).has('part-R1')).toBe(true);
    expect(openTicks('night-light', storage).list()).toEqual(['part-R1']);
    expect(openTicks('night', storage).list()).toEqual([]);
    expect(openTicks('night', storage).has('part-R1')).toBe(false);
  });

  it('takes a tick away again', () => {
    const storage = storageOf();
    const ticks = openTicks('night-light', storage);
    ticks.set('part-R1', true);
    ticks.set('part-C1', true);
    ticks.set('part-R1', false);
    expect(ticks.list()).toEqual(['part-C1']);
    expect(storage.length).toBe(1);
  });

  it('keeps both ticks of two pages that are open side by side', () => {
    const storage = storageOf();
    const [one, other] = [openTicks('night-light', storage), openTicks('night-light', storage)];
    one.set('part-R1', true);
    other.set('part-C1', true);
    expect([...one.list()].sort()).toEqual(['part-C1', 'part-R1']);
  });

  it('goes on without storage', () => {
    const ticks = openTicks('night-light', null);
    ticks.set('part-R1', true);
    expect([ticks.has('part-R1'), ticks.has('part-C1'), ticks.list()]).toEqual([true, false, ['part-R1']]);
  });

  it('remembers for the page what a full storage did not take, in both directions', () => {
    let full = false;
    const storage = storageOf(() => full);
    const ticks = openTicks('night-light', storage);
    ticks.set('part-C1', true);
    full = true;
    ticks.set('part-R1', true);
    ticks.set('part-C1', false);
    expect([ticks.has('part-R1'), ticks.has('part-C1'), ticks.list()]).toEqual([true, false, ['part-R1']]);
    full = false;
    ticks.set('part-C1', false);
    expect([ticks.list(), storage.length]).toEqual([['part-R1'], 0]);
  });
});

describe('ownStorage', () => {
  it('is null where the browser throws at the mere question', () => {
    const page = {
      get localStorage(): Storage {
        throw new DOMException('blocked', 'SecurityError');
      },
    };
    expect(ownStorage(page)).toBeNull();
  });
});
