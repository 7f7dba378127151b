import type { Path, TextPlace } from './place.ts';

export type SourceLanguage = 'cpp' | 'python';

/** What a pin is used for, as the call that takes it tells. */
export type PinUse =
  | 'output'
  | 'input'
  | 'analogue-in'
  | 'pwm'
  | 'interrupt'
  | 'led-strip'
  | 'i2c-sda'
  | 'i2c-scl'
  | 'spi'
  | 'uart'
  | 'servo'
  | 'encoder'
  | 'other'
  /** A constant that is named like a pin and given to no call. */
  | 'named';

/** A pin as the code knows it: `name` of the constant or variable (null for a bare literal), `pin` as written. */
export interface CodePin {
  readonly name: string | null;
  readonly pin: string;
  readonly uses: readonly PinUse[];
  /** Where the value stands. */
  readonly place: TextPlace;
  /** Where calls take it. */
  readonly usedAt: readonly TextPlace[];
  /** The bus, strip or object that it belongs to, such as `Wire` or `strip`. */
  readonly group: string | null;
}

/** A header or module that the code asks for. */
export interface Include {
  readonly written: string;
  /** The library's own name; null where the table does not tell. */
  readonly library: string | null;
  /** `local`: a file of the build; `standard`: comes with language or board core; `external`: somebody must install it. */
  readonly kind: 'local' | 'standard' | 'external';
  /** Whether a local file is there. True for the other kinds. */
  readonly found: boolean;
  readonly place: TextPlace;
}

/** A named number or text in the code: counts, addresses, baud rates, settings. */
export interface CodeConstant {
  readonly name: string | null;
  readonly value: string;
  readonly kind: 'count' | 'address' | 'baud' | 'setting';
  readonly place: TextPlace;
}

/** A credential in the code. Its text is never kept: the place's quote is masked. */
export interface Secret {
  readonly kind: 'wifi-password' | 'wifi-name' | 'password' | 'token' | 'key' | 'url-credentials';
  readonly name: string | null;
  readonly place: TextPlace;
}

/** What one source file says. */
export interface SourceFacts {
  readonly file: Path;
  readonly language: SourceLanguage;
  readonly pins: readonly CodePin[];
  readonly includes: readonly Include[];
  readonly constants: readonly CodeConstant[];
  readonly secrets: readonly Secret[];
}

/** What a manifest says the code is built for: `board` is null where it names none, or several. */
export interface BuildTarget {
  readonly file: Path;
  readonly board: string | null;
  /** What else has to be set the same to build it again, by the manifest's own keys. */
  readonly settings: Readonly<Record<string, string>>;
}

/** A library that a manifest asks for; `version` is null where it is not pinned. */
export interface Dependency {
  readonly library: string;
  readonly version: string | null;
  readonly place: TextPlace;
}
