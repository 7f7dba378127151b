import type { Path } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { Manifest } from './manifest.ts';
import manifestNames from './manifestNames.json';
import { readEntries, readPairs, readProfiles } from './readDataManifest.ts';
import { readProject } from './readProject.ts';
import { readProperties } from './readProperties.ts';
import { readRequirements } from './readRequirements.ts';
import { readSections } from './readSections.ts';

const forms: Readonly<Record<string, (source: SourceText) => Manifest>> = {
  sections: readSections,
  properties: readProperties,
  profiles: readProfiles,
  entries: readEntries,
  requirements: readRequirements,
  pairs: readPairs,
  project: readProject,
};

const names = manifestNames.forms.map(({ name, form }) => ({ pattern: new RegExp(`^(?:${name})$`, 'i'), form }));

/** Whether a file is known by its name to list dependencies. */
export function isManifest(path: Path): boolean {
  return formOf(path) !== undefined;
}

/** Dependencies, board and settings of a manifest. A file that is none by its name gives nothing. */
export function readManifest(source: SourceText): Manifest {
  const read = forms[formOf(source.file) ?? ''];
  return read ? read(source) : { dependencies: [], board: null, settings: {}, problems: [] };
}

/** Whether two names mean the same library: case, blanks, signs between words and an owner in front do not matter. */
export function sameLibrary(a: string, b: string): boolean {
  const key = keyOf(a);
  return key !== '' && key === keyOf(b);
}

function keyOf(name: string): string {
  return name
    .replace(/^.*\//, '')
    .toLowerCase()
    .replace(/[\s._-]+/g, '');
}

function formOf(path: Path): string | undefined {
  const last = path.slice(path.lastIndexOf('/') + 1);
  return names.find(({ pattern }) => pattern.test(last))?.form;
}
