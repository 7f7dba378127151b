import type { Endpoint } from '#core/connection.ts';
import type { PartId, PartLink, Price, Ref } from '#core/part.ts';
import type { Path, Place } from '#core/place.ts';
import type { Amount, Money, Quantity } from '#core/quantity.ts';
import type { AssetWant } from '#core/shot.ts';
import type { Callout } from '#core/shotChoice.ts';
import type { PowerState, SignalWord, StepId } from '#core/step.ts';

/**
 * The guide as one document, from which every output is written: an immutable tree of blocks, JSON through
 * and through. `format` rises when a reader of an older format would misread it; a new kind of block is
 * such a change, a new optional field is not.
 */
export interface Guide {
  readonly format: 2;
  /** BCP 47 tag of the maker's text. */
  readonly language: string;
  readonly title: string;
  /** What it is for, in plain words; null where nobody says. */
  readonly summary: string | null;
  /** Web address under which it is published, with a slash at its end; null where nobody says. */
  readonly site: string | null;
  /** Where readers report an error: a web address or one with `mailto:`; null where nobody says. */
  readonly reports: string | null;
  readonly blocks: readonly PageBlock[];
}

/** Unique in a guide; survives edits of other blocks. Holds no white space. */
export type BlockId = string;

/** What every block has: its name, and where its content comes from. */
interface Told {
  readonly id: BlockId;
  readonly places: readonly Place[];
}

/** Where a link leads. `unpublished` is a file of the build folder that the guide does not carry, `file` one that it does. */
export type LinkTarget =
  | { readonly kind: 'web'; readonly url: string }
  | { readonly kind: 'block'; readonly id: BlockId }
  | { readonly kind: 'file' | 'unpublished'; readonly path: Path };

/** Running text. Pictures stand between blocks, never in a line; links are resolved. */
export type Words =
  | { readonly kind: 'text' | 'code'; readonly value: string }
  | { readonly kind: 'strong' | 'emphasis' | 'deleted'; readonly children: readonly Words[] }
  | { readonly kind: 'link'; readonly to: LinkTarget; readonly children: readonly Words[] }
  | { readonly kind: 'break' };

/** Minutes with the hands on it, and minutes of waiting. */
export interface Minutes {
  readonly hands: number;
  readonly wait: number;
}

/** Blocks that follow one another on the page. */
export type PageBlock =
  | CoverBlock
  | SummaryBlock
  | NoticesBlock
  | CautionListBlock
  | SectionBlock
  | PartsBlock
  | ToolsBlock
  | WiringBlock
  | WorkBlock
  | TroublesBlock
  | CodeFileBlock
  | FilesBlock
  | LicencesBlock
  | CreditsBlock
  | RevisionBlock;

/** Blocks that a section, a step, a list item or a quotation is made of. */
export type BodyBlock =
  | ParagraphBlock
  | HeadingBlock
  | ListBlock
  | ListingBlock
  | QuoteBlock
  | TableBlock
  | RuleBlock
  | PictureBlock
  | MissingPictureBlock
  | CautionBlock
  | MistakeBlock
  | MeasureBlock
  | ExpectBlock;

export type GuideBlock = PageBlock | StepBlock | BodyBlock | ErratumBlock;

/** The finished thing, before all else. */
export interface CoverBlock extends Told {
  readonly kind: 'cover';
  readonly picture: PictureBlock | MissingPictureBlock;
}

/** What a reader wants to know before deciding to build it, in sentences. */
export interface SummaryBlock extends Told {
  readonly kind: 'summary';
  /** `minutes` is null where a step tells none, `cost` where a part lacks a price or there are two currencies. */
  readonly totals: { readonly minutes: Minutes | null; readonly cost: Money | null };
  readonly sentences: readonly {
    readonly about: 'purpose' | 'skills' | 'time' | 'cost' | 'supply' | 'status';
    readonly words: readonly Words[];
  }[];
}

/** What a reader must know of the guide itself: where its rehearsal halts, and what is known to be wrong. */
export interface NoticesBlock extends Told {
  readonly kind: 'notices';
  readonly halts: readonly { readonly message: string; readonly steps: readonly StepMark[] }[];
  readonly errata: readonly ErratumBlock[];
}

/** Something that the guide had wrong and that no edition has put right yet. */
export interface ErratumBlock extends Told {
  readonly kind: 'erratum';
  /** ISO 8601 date. */
  readonly at: string | null;
  readonly wrong: string;
  readonly right: string | null;
  readonly editions: string | null;
  readonly by: string | null;
  readonly step: StepMark | null;
}

/** Every caution of the guide together, the gravest first, each message once; each also stands in its steps. */
export interface CautionListBlock extends Told {
  readonly kind: 'cautionList';
  readonly cautions: readonly {
    readonly word: SignalWord;
    readonly message: string;
    readonly steps: readonly StepMark[];
  }[];
}

/** A step as named from elsewhere. */
export interface StepMark {
  readonly block: BlockId;
  readonly number: number;
}

/** The maker's own text under a heading; without one where it opens the guide. */
export interface SectionBlock extends Told {
  readonly kind: 'section';
  readonly heading: string | null;
  /** Rank of the heading, 2 to 6; never skips one. */
  readonly level: number;
  /** Whether it is for those who want to know more, and can be folded away. */
  readonly folded: boolean;
  /** Whether it helps to find what went wrong. */
  readonly troubleshooting: boolean;
  readonly body: readonly BodyBlock[];
}

export interface PartsBlock extends Told {
  readonly kind: 'parts';
  readonly body: readonly BodyBlock[];
  readonly rows: readonly PartRow[];
}

export interface PartRow extends Told {
  readonly part: PartId;
  readonly refs: readonly Ref[];
  /** Empty where nobody says how many; more than one where the list contradicts itself. */
  readonly amounts: readonly Amount[];
  readonly description: string;
  /** Null where the description says it already. */
  readonly value: Quantity | null;
  readonly ratings: readonly Quantity[];
  readonly package: string | null;
  readonly mpn: string | null;
  readonly supplier: string | null;
  readonly links: readonly PartLink[];
  readonly price: Price | null;
  readonly substitution: string | null;
  readonly note: string | null;
  readonly fitted: boolean;
  readonly group: string | null;
  readonly usedIn: readonly StepMark[];
  /** What the list gives for a value and is no quantity that is known here, such as `22 AWG`. */
  readonly stated?: string;
  /** Spare pieces for one build, where the list counts them apart from the amount. */
  readonly spares?: number;
  /** True where the price is for a pack of `price.per`, so that none can be had singly for it. */
  readonly packed?: boolean;
  readonly look?: PartLook;
}

/** A part as it lies on paper: what is drawn of it, and by which words a beginner knows it. */
export interface PartLook {
  /** Null where nothing is known of its form. */
  readonly drawing: Drawing | null;
  readonly signs: readonly LookSign[];
}

/** One thing to look for. `usual` where makers mostly do so and neither a standard nor this build's maker says it. */
export interface LookSign {
  readonly words: string;
  readonly usual: boolean;
}

/** What is drawn of a part; only what is known of it, the rest stays open. */
export type Drawing =
  /** Bands from the end that is read first; null for one that is there and whose colour is not known. */
  | { readonly kind: 'banded'; readonly bands: readonly (string | null)[] }
  /** A form that all parts of a class share, with what is printed on it. */
  | { readonly kind: 'form'; readonly form: PartForm; readonly print: readonly string[] }
  /** A body with pins along two sides. `feet`: pins for holes, flat leads for pads, or a socket's openings. */
  | { readonly kind: 'dual'; readonly pins: number; readonly feet: 'pins' | 'leads' | 'openings' }
  /** A body with contacts along four sides. */
  | { readonly kind: 'quad'; readonly pins: number }
  /** Rows of pins or of openings. */
  | { readonly kind: 'strip'; readonly rows: number; readonly columns: number; readonly openings: boolean }
  | { readonly kind: 'terminals'; readonly positions: number }
  /** A flat thing by its sides in millimetres, null where not known; `pins` along its edges, `holes` all over it. */
  | {
      readonly kind: 'plate';
      readonly size: readonly [number, number] | null;
      readonly pins: { readonly rows: number; readonly columns: number } | null;
      readonly holes: boolean;
    }
  /** A ring by its diameters in millimetres. */
  | { readonly kind: 'ring'; readonly outside: number; readonly inside: number };

export const partForms = [
  'disc',
  'box',
  'can',
  'bead',
  'chip',
  'barred-chip',
  'block',
  'diode',
  'led',
  'led-four',
  'light-cell',
  'to-92',
  'to-220',
  'sot-23',
  'sot-223',
  'axial-coil',
  'ring-coil',
  'glass-fuse',
  'blade-fuse',
  'crystal',
  'trimmer',
  'dial',
  'tact',
  'toggle',
  'slide',
  'encoder',
  'round-jack',
  'coin-cell',
  'round-cell',
  'snap-battery',
  'pouch',
  'wire',
  'tube',
  'screw',
  'nut',
  'pillar',
] as const;

/** Forms that are drawn once and shared by all parts of their class. */
export type PartForm = (typeof partForms)[number];

export interface ToolsBlock extends Told {
  readonly kind: 'tools';
  readonly body: readonly BodyBlock[];
  readonly rows: readonly ToolRow[];
}

export interface ToolRow extends Told {
  readonly name: string;
  readonly needed: boolean;
  readonly link: string | null;
  readonly note: string | null;
}

export interface WiringBlock extends Told {
  readonly kind: 'wiring';
  readonly rows: readonly WiringRow[];
}

export interface WiringRow extends Told {
  readonly from: Endpoint;
  readonly to: Endpoint;
  readonly net: string | null;
  readonly colour: string | null;
  readonly gauge: string | null;
  readonly length: string | null;
  readonly note: string | null;
  readonly madeIn: readonly StepMark[];
}

/** The steps in the order of doing, with what the maker wrote between them. */
export interface WorkBlock extends Told {
  readonly kind: 'work';
  readonly blocks: readonly (StepBlock | SectionBlock)[];
}

export interface StepBlock extends Told {
  readonly kind: 'step';
  readonly step: StepId;
  /** Computed from the order, from 1. */
  readonly number: number;
  readonly heading: string;
  /** Rank of the heading, 3 to 6; never skips one. */
  readonly level: number;
  readonly needs: Needs;
  readonly minutes: Minutes | null;
  /** What the steps before it take; null where one of them does not tell. */
  readonly after: Minutes | null;
  /** Whether the thing has power while the step is done, as declared or as the rehearsal found it. */
  readonly powered: boolean;
  readonly side: string | null;
  readonly optional: string | null;
  readonly variant: string | null;
  readonly irreversible: string | null;
  readonly makes: readonly string[];
  readonly removes: readonly string[];
  readonly joins: readonly StepJoin[];
  /** To be heard before the first action. */
  readonly cautions: readonly CautionBlock[];
  /** To be measured before the step's last action switches the power on; told before the text. */
  readonly beforePower: readonly MeasureBlock[];
  readonly body: readonly BodyBlock[];
  /** What the builder should now see or measure. */
  readonly checks: readonly (MeasureBlock | ExpectBlock)[];
  /** What went wrong here on the maker's own bench. */
  readonly mistakes: readonly MistakeBlock[];
  /** What is known to be wrong in this step. */
  readonly errata: readonly ErratumBlock[];
  /** Words of the trade that this step is the first to use and nobody explains. */
  readonly words: readonly { readonly term: string; readonly meaning: string }[];
}

/** What must lie on the bench before the step begins. */
export interface Needs {
  readonly parts: readonly PartNeed[];
  readonly tools: readonly { readonly name: string; readonly row: BlockId | null }[];
  readonly code: readonly { readonly path: Path; readonly onto: Ref | null; readonly block: BlockId | null }[];
  readonly power: { readonly during: PowerState; readonly after: PowerState } | null;
}

/** `refs` are those the step takes up; `named` is what it says where the parts list has no such part. */
export interface PartNeed {
  readonly row: BlockId | null;
  readonly refs: readonly Ref[];
  readonly amount: Amount;
  readonly named: string;
  /** Null where the name says it already. */
  readonly value: Quantity | null;
}

/** A connection that the step makes; `row` is null where the wiring table does not hold it. */
export interface StepJoin {
  readonly from: Endpoint;
  readonly to: Endpoint;
  readonly row: BlockId | null;
  readonly colour: string | null;
  readonly length: string | null;
}

/** What went wrong on the maker's bench, by what was seen. */
export interface TroublesBlock extends Told {
  readonly kind: 'troubles';
  readonly rows: readonly {
    readonly symptom: string;
    readonly cause: string | null;
    readonly remedy: string | null;
    readonly reading: string | null;
    readonly step: StepMark | null;
  }[];
}

/** Files of the build that come with the guide, code apart. */
export interface FilesBlock extends Told {
  readonly kind: 'files';
  readonly rows: readonly PublishedFile[];
}

export interface PublishedFile {
  readonly path: Path;
  readonly purpose: 'design' | 'licence';
  readonly bytes: number;
  /** Why it is not given out; null where it is. */
  readonly withheld: string | null;
}

/** A source file, credentials already replaced; `withheld` counts them. */
export interface CodeFileBlock extends Told {
  readonly kind: 'codeFile';
  readonly path: Path;
  readonly language: string;
  readonly text: string;
  readonly withheld: number;
}

export interface LicencesBlock extends Told {
  readonly kind: 'licences';
  /** `spdx` is an SPDX expression, or whatever the maker wrote; `folder` is a licence file that nobody explained. */
  readonly licences: readonly { readonly covers: 'hardware' | 'code' | 'text' | 'folder'; readonly spdx: string }[];
}

export interface CreditsBlock extends Told {
  readonly kind: 'credits';
  readonly authors: readonly string[];
}

export interface RevisionBlock extends Told {
  readonly kind: 'revision';
  readonly revision: string | null;
  /** ISO 8601 date on which the guide was composed. */
  readonly asOf: string;
}

export interface ParagraphBlock extends Told {
  readonly kind: 'paragraph';
  readonly words: readonly Words[];
}

/** A heading inside a quotation or a list item. */
export interface HeadingBlock extends Told {
  readonly kind: 'heading';
  readonly words: readonly Words[];
}

export interface ListBlock extends Told {
  readonly kind: 'list';
  readonly ordered: boolean;
  readonly start: number;
  /** `done` is null where the item is none to be ticked off. */
  readonly items: readonly { readonly done: boolean | null; readonly body: readonly BodyBlock[] }[];
}

export interface ListingBlock extends Told {
  readonly kind: 'listing';
  readonly language: string | null;
  readonly text: string;
}

export interface QuoteBlock extends Told {
  readonly kind: 'quote';
  readonly body: readonly BodyBlock[];
}

export interface TableBlock extends Told {
  readonly kind: 'table';
  readonly align: readonly ('left' | 'right' | 'center' | null)[];
  readonly header: readonly (readonly Words[])[];
  readonly rows: readonly (readonly (readonly Words[])[])[];
}

export interface RuleBlock extends Told {
  readonly kind: 'rule';
}

/** A picture by the path of its shot; the clean copies to show are made later, at `widths`. */
export interface PictureBlock extends Told {
  readonly kind: 'picture';
  readonly shot: Path;
  /** Pixels of the upright original; null where its header does not tell. */
  readonly width: number | null;
  readonly height: number | null;
  /** Ascending, none larger than the original. */
  readonly widths: readonly number[];
  readonly format: AssetWant['format'];
  /** Never empty. */
  readonly alt: string;
  readonly caption: string | null;
  /** Marks on it, to be drawn over it. */
  readonly callouts: readonly Callout[];
}

/** A picture that the text promises and the guide cannot show. */
export interface MissingPictureBlock extends Told {
  readonly kind: 'missingPicture';
  /** Path or address, as far as it is known. */
  readonly wanted: string;
  readonly alt: string;
  readonly caption: string | null;
  readonly why: 'not-found' | 'elsewhere' | 'unreadable' | 'clip';
}

export interface CautionBlock extends Told {
  readonly kind: 'caution';
  readonly word: SignalWord;
  readonly message: string;
}

/** A mistake from the log, with what caused and what cured it. */
export interface MistakeBlock extends Told {
  readonly kind: 'mistake';
  readonly at: string | null;
  readonly mistake: string;
  readonly cause: string | null;
  readonly remedy: string | null;
  readonly reading: string | null;
}

/** Where to probe and what to read. `between` is empty where the text does not name the points. */
export interface MeasureBlock extends Told {
  readonly kind: 'measure';
  readonly between: readonly string[];
  readonly expect: string;
  readonly text: string;
}

export interface ExpectBlock extends Told {
  readonly kind: 'expect';
  readonly text: string;
}
