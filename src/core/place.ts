/** A path inside the build folder: relative, forward slashes, spelled as on disk. */
export type Path = string;

/** Lower-case hexadecimal SHA-256 of a file's bytes. */
export type Hash = string;

/** Half-open range of UTF-16 code units in a file's decoded text; a byte order mark is not counted. */
export type Span = readonly [start: number, end: number];

/** A region of an upright picture; every field is a fraction of its width or height, 0 to 1. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Words in a text file. `line` and `column` count from 1; `column` counts UTF-16 code units. */
export interface TextPlace {
  readonly kind: 'text';
  readonly file: Path;
  readonly span: Span;
  readonly line: number;
  readonly column: number;
  readonly quote: string;
}

/** A picture, or a region of one. */
export interface PicturePlace {
  readonly kind: 'picture';
  readonly file: Path;
  readonly region?: Box;
}

/** A whole file or folder, when no words of it can be pointed at. */
export interface FilePlace {
  readonly kind: 'file';
  readonly file: Path;
}

/** Where a fact or a finding comes from. */
export type Place = TextPlace | PicturePlace | FilePlace;
