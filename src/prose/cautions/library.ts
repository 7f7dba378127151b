import type { ActionKind } from '#core/action.ts';
import type { HazardId } from '#core/hazard.ts';
import type { SignalWord } from '#core/step.ts';
import deferral from './deferral.json';
import batteries from './library/batteries.json';
import chemicals from './library/chemicals.json';
import electricity from './library/electricity.json';
import heat from './library/heat.json';
import light from './library/light.json';
import workshop from './library/workshop.json';

/** Who decides where a guide cannot: the part's data sheet, a local rule, or a person who holds a licence. */
export type Deferral = 'data-sheet' | 'local-rule' | 'licensed-person';

/** What in a build gives a hazard away; phrases as `phrasesOf` reads them. */
export interface Triggers {
  readonly actions?: readonly ActionKind[];
  readonly tools?: readonly string[];
  readonly parts?: readonly string[];
  readonly supply?: readonly string[];
  readonly text?: readonly string[];
  /** Actions count only with one of these words in the sentence or the next. */
  readonly objects?: readonly string[];
  /** Name of the sum that finds it in numbers. */
  readonly computed?: string;
  /** Words in the same row or sentence that make it harmless. */
  readonly unless?: readonly string[];
  /** Words that make it harmless only where they stand beside it, in the same clause. */
  readonly unlessBeside?: readonly string[];
  /** What a listed thing is instead, by the head of its description: the holder of a cell is no cell. */
  readonly otherThings?: readonly string[];
  /** True where a builder meets it by taking up the listed part. */
  readonly handled?: boolean;
  /** Work that is done with its tools, where a step names them. */
  readonly work?: readonly ActionKind[];
}

/** One entry of the library. */
export interface LibraryCaution {
  readonly id: HazardId;
  /** As a noun phrase. */
  readonly name: string;
  /** True for what can kill or maim: a builder must not go on without a word of it. */
  readonly grave: boolean;
  /** True where the listed thing is the hazard, whether or not a step is seen to take it up. */
  readonly inItself: boolean;
  /** The least signal word by its meaning in ANSI Z535.4. */
  readonly word: SignalWord;
  /** The gravest signal word that fits. */
  readonly mostWord: SignalWord;
  /** Found only in builds that bring one of these too. */
  readonly onlyWith: readonly HazardId[];
  /** Not found again in builds that bring one of these. */
  readonly isPartOf: readonly HazardId[];
  readonly triggers: Triggers;
  readonly hazard: string;
  readonly consequence: string;
  readonly avoid: string;
  /** What to wear, and words that name it; null where nothing is worn against it. */
  readonly protect: { readonly wear: string; readonly words: readonly string[] } | null;
  readonly defer: readonly Deferral[];
  /** Year and month of rules that change. */
  readonly dated: string | null;
  /** True for what everybody knows of: it is tidy to name it. */
  readonly everyday: boolean;
  /** Words by which a caution is about this hazard. `@` stands for the parts that bring it. */
  readonly speaksOf: readonly string[];
  /** Words that may be about it, where the caution is not about one of `others`. */
  readonly hints: readonly string[];
  /** Other matters that share words with it. */
  readonly others: readonly string[];
  /** Words that say it plainly enough without a signal word. */
  readonly plainly: readonly string[];
  /** The same, where they are not about one of `others`. */
  readonly plainHints: readonly string[];
  readonly source: string;
}

interface Entry extends Omit<Partial<LibraryCaution>, 'word' | 'mostWord'> {
  readonly id: string;
  readonly name: string;
  readonly word: string;
  readonly mostWord?: string;
  readonly hazard: string;
  readonly consequence: string;
  readonly avoid: string;
  readonly defer: readonly Deferral[];
  readonly speaksOf: readonly string[];
  readonly source: string;
}

const tables: readonly { readonly hazards: readonly unknown[] }[] = [
  electricity,
  batteries,
  light,
  heat,
  chemicals,
  workshop,
];

/** The cautions library, the gravest kinds first. */
export const library: readonly LibraryCaution[] = tables
  .flatMap(({ hazards }) => hazards as readonly Entry[])
  .map((entry) => ({
    triggers: {},
    grave: false,
    inItself: false,
    onlyWith: [],
    isPartOf: [],
    protect: null,
    dated: null,
    everyday: false,
    hints: [],
    others: [],
    plainly: [],
    plainHints: [],
    ...entry,
    word: entry.word as SignalWord,
    mostWord: (entry.mostWord ?? 'danger') as SignalWord,
  }));

const byId = new Map(library.map((entry) => [entry.id, entry]));

/** An entry by its name. */
export function cautionFor(id: HazardId): LibraryCaution {
  const entry = byId.get(id);
  if (entry === undefined) throw new Error(`the cautions library has no entry ${id}`);
  return entry;
}

/** The library's words for a hazard: what it is, what it does, how to avoid it, what to wear, and who decides else. */
export function wordingOf({ hazard, consequence, avoid, protect, defer }: LibraryCaution): string {
  return [hazard, consequence, avoid, protect?.wear ?? '', ...defer.map((level) => deferral[level])]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
