/** What of the browser's storage is used. */
export type KeyedStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** What a reader has ticked in one guide, such as parts that lie ready, by the ids of their blocks. */
export interface Ticks {
  has(id: string): boolean;
  set(id: string, ticked: boolean): void;
  /** In no order that means anything. */
  list(): readonly string[];
}

/**
 * The ticks of the guide of that slug. Each is kept under a key of its own, so that two pages which are open side by
 * side never undo each other. Where storage is missing, refuses or is full, ticks live as long as the page.
 */
export function openTicks(slug: string, storage: KeyedStorage | null): Ticks {
  const prefix = `twicebuilt/${slug}/`;
  const here = new Map<string, boolean>();
  const kept = (): string[] =>
    attempt([], () =>
      Array.from({ length: storage?.length ?? 0 }, (_, i) => storage?.key(i) ?? '')
        .filter((key) => key.startsWith(prefix))
        .map((key) => key.slice(prefix.length)),
    );
  return {
    has: (id) => here.get(id) ?? attempt(false, () => (storage?.getItem(prefix + id) ?? null) !== null),
    set(id, ticked) {
      const isKept = attempt(false, () => {
        if (storage === null) return false;
        if (ticked) storage.setItem(prefix + id, '1');
        else storage.removeItem(prefix + id);
        return true;
      });
      if (isKept) here.delete(id);
      else here.set(id, ticked);
    },
    list() {
      const ids = new Set(kept());
      for (const [id, ticked] of here) {
        if (ticked) ids.add(id);
        else ids.delete(id);
      }
      return [...ids];
    },
  };
}

/** This browser's storage; null where it is blocked, which some browsers answer by throwing. */
export function ownStorage(page: { readonly localStorage: Storage }): Storage | null {
  return attempt(null, () => page.localStorage);
}

/** What `work` answers, or `otherwise` where storage throws. */
function attempt<T>(otherwise: T, work: () => T): T {
  try {
    return work();
  } catch {
    return otherwise;
  }
}
