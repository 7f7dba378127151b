import type { PartId, Ref } from '#core/part.ts';
import { slugOf } from '#notation/names.ts';

/** Longer names are cut at a word: an id is to be typed and read. */
const longest = 40;

/** Gives each part an id of its own. */
export class PartIds {
  private readonly taken: Set<string>;
  /** How many parts of a name had to be told apart so far. */
  private readonly repeats = new Map<string, number>();

  constructor(taken: ReadonlySet<string> = new Set()) {
    this.taken = new Set([...taken].map((id) => id.toLowerCase()));
  }

  /**
   * The first reference, else a slug of the description. A repeat takes its section along; where that is taken too, a
   * letter is added, never a number, since that could be taken for another reference.
   */
  next(refs: readonly Ref[], description: string, section: string | null): PartId {
    const [ref] = refs;
    const plain = ref ?? short(description);
    if (this.take(plain)) return plain;
    const slug = slugOf(plain);
    const long = section === null ? slug : `${slugOf(section)}-${slug}`;
    if (this.take(long)) return long;
    for (let n = (this.repeats.get(long) ?? 0) + 1; ; n++) {
      const id = `${long}-${lettersOf(n)}`;
      if (!this.take(id)) continue;
      this.repeats.set(long, n);
      return id;
    }
  }

  private take(id: string): boolean {
    const plain = id.toLowerCase();
    if (this.taken.has(plain)) return false;
    this.taken.add(plain);
    return true;
  }
}

function short(description: string): string {
  const slug = slugOf(description);
  if (slug.length <= longest) return slug;
  const cut = slug.slice(0, longest + 1);
  return cut.slice(0, Math.max(cut.lastIndexOf('-'), longest / 2));
}

/** b, c … z, ba, bb …: the second, third … of a name. */
function lettersOf(n: number): string {
  const last = String.fromCharCode(97 + (n % 26));
  return n < 26 ? last : lettersOf(Math.floor(n / 26)) + last;
}
