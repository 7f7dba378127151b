import type { BuildTarget, Dependency, Secret, SourceFacts } from './code.ts';
import type { Connection } from './connection.ts';
import type { Erratum } from './erratum.ts';
import type { LogNote } from './log.ts';
import type { Part, PartsList, Tool } from './part.ts';
import type { Path } from './place.ts';
import type { Problem } from './problem.ts';
import type { Role, Settings } from './settings.ts';
import type { Shot } from './shot.ts';
import type { ShotChoice } from './shotChoice.ts';
import type { SourceText } from './sourceText.ts';
import type { Instructions, Section } from './step.ts';

/** One file of the folder, vendored, generated and hidden ones left out. */
export interface FileEntry {
  readonly path: Path;
  readonly bytes: number;
}

/** A licence text, with the SPDX identifier it was recognised as. */
export interface LicenceFile {
  readonly path: Path;
  readonly spdx: string | null;
}

/** Everything the maker's files say, as records. Never changed once made. */
export interface Build {
  /** Name of the folder. */
  readonly name: string;
  /** True where the folder holds a `twicebuilt.yaml`. */
  readonly adopted: boolean;
  readonly settings: Settings;
  readonly roles: readonly Role[];
  readonly files: readonly FileEntry[];
  readonly partsLists: readonly (PartsList & { readonly file: Path })[];
  /** All parts of all lists. */
  readonly parts: readonly Part[];
  readonly tools: readonly Tool[];
  readonly connections: readonly Connection[];
  readonly instructions: Instructions;
  /** Sections of pages that the guide links to and that play no role, all as prose. */
  readonly beside: readonly Section[];
  readonly log: readonly LogNote[];
  readonly errata: readonly Erratum[];
  readonly sources: readonly SourceFacts[];
  readonly dependencies: readonly Dependency[];
  /** Manifests that say for which board, or with which platform, the code is built. */
  readonly targets: readonly BuildTarget[];
  /** Credentials in any text of the build, code included. */
  readonly secrets: readonly Secret[];
  /** Photos and clips that were looked into: all of them, or only those that the guide shows. */
  readonly shots: readonly Shot[];
  /** What the maker decided about shots. */
  readonly choices: readonly ShotChoice[];
  readonly licences: readonly LicenceFile[];
  /** Text files that play a role, by path: what checks of wording read. */
  readonly texts: ReadonlyMap<Path, SourceText>;
  readonly problems: readonly Problem[];
}
