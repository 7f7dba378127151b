import type { Known } from './claim.ts';
import type { TextPlace } from './place.ts';
import type { Amount, Money, Quantity } from './quantity.ts';

/** A reference designator such as `R1`, in upper case. */
export type Ref = string;

/** The part's first reference designator, or a slug of its description where it has none. */
export type PartId = string;

export interface PartLink {
  readonly kind: 'shop' | 'datasheet' | 'file' | 'other';
  readonly url: string;
}

/** A price as listed: for `per` pieces, at `date` (ISO 8601, null where not said). */
export interface Price extends Money {
  readonly per: number;
  readonly date: string | null;
}

/** One line of the bill of materials. */
export interface Part {
  readonly id: PartId;
  readonly refs: readonly Ref[];
  /** Contradicted where the quantity column and the count of references disagree. */
  readonly amount: Known<Amount>;
  readonly description: string;
  readonly value: Known<Quantity>;
  readonly ratings: readonly Quantity[];
  readonly package: string | null;
  readonly mpn: string | null;
  readonly supplier: string | null;
  readonly links: readonly PartLink[];
  readonly price: Price | null;
  readonly substitution: string | null;
  readonly note: string | null;
  /** False for a part that is marked as not fitted. */
  readonly fitted: boolean;
  /** Heading of the group of rows it stands in. */
  readonly section: string | null;
  /** Columns that no meaning was found for, by header. */
  readonly other: Readonly<Record<string, string>>;
  /** The row. */
  readonly place: TextPlace;
  /** The cell of each meaning that the row fills, such as `reference`, `quantity`, `value`. */
  readonly cells: Readonly<Partial<Record<PartColumn, TextPlace>>>;
}

/** Meanings that a column of a parts list can have. */
export type PartColumn =
  | 'reference'
  | 'quantity'
  | 'description'
  | 'value'
  | 'rating'
  | 'package'
  | 'mpn'
  | 'manufacturer'
  | 'supplier'
  | 'supplierNumber'
  | 'link'
  | 'datasheet'
  | 'price'
  | 'total'
  | 'currency'
  | 'date'
  | 'substitution'
  | 'fitted'
  | 'note'
  | 'section';

/** A parts list as read: `columns` says which header was taken for which meaning (null: none). */
export interface PartsList {
  readonly columns: readonly { readonly header: string; readonly meaning: PartColumn | null }[];
  readonly parts: readonly Part[];
}

/** A tool the builder needs; `needed` is false for what is merely nice to have. */
export interface Tool {
  readonly name: string;
  readonly needed: boolean;
  readonly link: string | null;
  readonly note: string | null;
  readonly place: TextPlace;
}
