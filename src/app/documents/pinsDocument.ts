import { sameLibrary } from '#formats/manifests/readManifest.ts';
import type { PinListing } from '../listPins.ts';
import { problemDocument } from './placeDocument.ts';

/** JSON output of `pins`. The text of a secret is in none of it. */
export function pinsDocument({ sources, dependencies, secrets, problems }: PinListing): Record<string, unknown> {
  return {
    format: 1,
    pins: sources.flatMap(({ pins }) =>
      pins.map(({ name, pin, uses, group, place, usedAt }) => ({
        file: place.file,
        line: place.line,
        name,
        pin,
        use: uses[0] ?? 'other',
        uses,
        group,
        usedAt: usedAt.map(({ file, line }) => ({ file, line })),
      })),
    ),
    libraries: sources.flatMap(({ includes }) =>
      includes
        .filter(({ kind }) => kind === 'external')
        .map(({ written, library, place }) => ({
          include: written,
          library,
          version:
            dependencies.find((dependency) => sameLibrary(dependency.library, library ?? written))?.version ?? null,
          file: place.file,
          line: place.line,
        })),
    ),
    constants: sources.flatMap(({ constants }) =>
      constants.map(({ name, value, kind, place }) => ({ file: place.file, line: place.line, name, value, kind })),
    ),
    secrets: secrets.map(({ kind, place }) => ({ file: place.file, line: place.line, kind })),
    problems: problems.map(problemDocument),
  };
}
