import type { FileEntry } from '#core/build.ts';
import type { SourceLanguage } from '#core/code.ts';
import type { Box, Hash, Path } from '#core/place.ts';
import type { Asset, AssetWant, Shot } from '#core/shot.ts';
import type { PicturePoint } from '#core/shotChoice.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import type { Board } from '#imaging/board/findBoard.ts';
import type { Homography } from '#imaging/geometry/homography.ts';
import type { Measures } from '#imaging/measures/measurePicture.ts';
import type { Subject } from '#imaging/subject/findSubject.ts';

/** The folder's files, and those passed over with the reason. */
export interface Listing {
  readonly files: readonly FileEntry[];
  readonly leftOut: readonly { readonly path: Path; readonly why: string }[];
}

/** One folder of the maker's, or one that outputs go to. Every method throws `Failure` when the world will not. */
export interface FolderPort {
  /** Absolute path, for messages. */
  readonly root: string;
  /**
   * All files below the folder in code-point order of their paths. Links are followed once; a cycle is left out.
   * `skip` returns why a file or folder is passed over, or null.
   */
  walk(skip: (path: Path, isFolder: boolean) => string | null): Promise<Listing>;
  exists(path: Path): Promise<boolean>;
  read(path: Path): Promise<Uint8Array>;
  /** The first bytes of a file, at most `bytes`. */
  readHead(path: Path, bytes: number): Promise<Uint8Array>;
  hash(path: Path): Promise<Hash>;
  /**
   * Writes the whole file or nothing: a temporary file beside it, flushed, then renamed; mode and symbolic
   * links are kept. With `base`, only if the file still has that hash (`null`: only if there is none).
   */
  write(path: Path, bytes: Uint8Array, options?: { readonly base?: Hash | null }): Promise<void>;
  /** Adds whole lines at the end. A torn last line left by an earlier crash is completed first. */
  append(path: Path, text: string): Promise<void>;
  /** Removes a file or an empty folder that the tool itself made. */
  remove(path: Path): Promise<void>;
}

/** What a picture's header and bytes tell. */
export type ShotFacts = Omit<Shot, 'path'>;

export interface CleanReport {
  readonly asset: Asset;
  readonly data: Uint8Array;
  /** Private fields of the original that the copy lacks. */
  readonly removed: readonly string[];
}

/** What a picture shows and how well: all measures, and what it is about. */
export interface ShotMeasures extends Measures {
  readonly subject: Pick<Subject, 'box' | 'confidence'>;
  readonly board: Board | null;
}

/** How the second of two pictures lies over the first; null where they show different things. */
export interface Comparison {
  readonly alignment: {
    /** From the second to the first, in upright pixels of both. */
    readonly homography: Homography;
    /** Share of what both show that agrees, 0 to 1. */
    readonly confidence: number;
  } | null;
  /** What differs, the largest first; null where too little of the pictures can be compared. */
  readonly changes?:
    | readonly {
        /** In fractions of the first picture, as the area is. */
        readonly box: Box;
        readonly area: number;
        /** The same place in fractions of the second picture. */
        readonly inSecond: Box | null;
      }[]
    | null;
}

/** Fractions of the upright picture, clockwise from the corner that is to be top left. */
export type BoardCorners = readonly [PicturePoint, PicturePoint, PicturePoint, PicturePoint];

/** How a board lies in a photo and how it is to be shown. */
export interface FlattenWish {
  /** Null to look for a whole board. */
  readonly corners: BoardCorners | null;
  /** Millimetres. */
  readonly size: { readonly width: number; readonly height: number };
  /** Null for as many as the photo has. */
  readonly pixelsPerMillimetre: number | null;
  readonly format: 'jpeg' | 'png';
}

/** A board from straight above; under it, from `boardHeight` on, a bar tells the scale. Sizes in pixels. */
export interface FlatView {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly boardHeight: number;
  readonly pixelsPerMillimetre: number;
  readonly corners: BoardCorners;
}

/** Outcome of one item of a batch; the rest goes on when one fails. */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string };

/** Work on pixels, done in worker threads. Originals are never opened for writing. */
export interface PicturePort {
  /** Kind, upright size, camera data and leaks of one file, from its bytes. */
  inspect(path: Path): Promise<Result<ShotFacts>>;
  /** A clean copy: upright, no wider than wanted, profile kept, every private field gone. */
  clean(want: AssetWant, name: string): Promise<Result<CleanReport>>;
  /** How one picture lies over another, and where they differ. */
  compare(first: Path, second: Path): Promise<Result<Comparison>>;
  /** How sharp, light, coloured and tidy a picture is, and what it is about. */
  measure(path: Path): Promise<Result<ShotMeasures>>;
  /** A board in a photo from straight above and true to scale. */
  flatten(path: Path, wish: FlattenWish): Promise<Result<FlatView>>;
  close(): Promise<void>;
}

/** Grammars of programming languages. */
export interface GrammarPort {
  parse(language: SourceLanguage, text: string): Promise<SyntaxNode>;
}

/** Derived results, keyed by content; may be emptied at any time. */
export interface CachePort {
  get(key: string): Promise<Uint8Array | null>;
  put(key: string, data: Uint8Array): Promise<void>;
}

/** Where long work tells how far it is, and asks whether to go on. */
export interface ProgressPort {
  /** `total` is null where it is not known yet. Throws `Failure('cancelled')` when the maker has cancelled. */
  report(what: string, done: number, total: number | null): void;
}

export interface World {
  readonly grammars: GrammarPort;
  readonly progress: ProgressPort;
  /** Tells one build of this program from another; null where that is not known. */
  readonly program: string | null;
  /** ISO 8601 instant. */
  now(): string;
  /** A path made absolute, with links and `..` resolved as far as it exists. */
  absolute(path: string): Promise<string>;
  openFolder(path: string): Promise<FolderPort>;
  /** A folder to write into, made with its parents where it is missing. */
  openOutput(path: string): Promise<FolderPort>;
  /** The cache that belongs to a folder: inside it when adopted, else in the user's cache folder. */
  openCache(folder: FolderPort, adopted: boolean): Promise<CachePort>;
  openPictures(folder: FolderPort, cache: CachePort): Promise<PicturePort>;
}
