import type { PartId, Ref } from '#core/part.ts';
import { slugOf, uniqueSlug } from '#notation/names.ts';

/** Longer names are cut at a word: an id is to be typed and read. */
const longest = 40;

/** Gives each part an id of its own. */
export class PartIds {
  private readonly taken: Set<string>;

  constructor(taken: ReadonlySet<string> = new Set()) {
    this.taken = new Set(taken);
  }

  /** The first reference, else a slug of the description. A second part of the same name takes its section along. */
  next(refs: readonly Ref[], description: string, section: string | null): PartId {
    const [ref] = refs;
    const id = ref !== undefined && !this.taken.has(ref) ? ref : this.slug(ref ?? short(description), section);
    this.taken.add(id);
    return id;
  }

  private slug(name: string, section: string | null): PartId {
    return uniqueSlug(name, new Set([...this.taken].map((id) => id.toLowerCase())), section ?? undefined);
  }
}

function short(description: string): string {
  const slug = slugOf(description);
  if (slug.length <= longest) return slug;
  const cut = slug.slice(0, longest + 1);
  return cut.slice(0, Math.max(cut.lastIndexOf('-'), longest / 2));
}
