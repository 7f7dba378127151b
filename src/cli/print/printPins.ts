import type { PinListing } from '#app/listPins.ts';
import { inColumns, safe, wrapped } from './layout.ts';

/** Pins, libraries, numbers and credentials of the code. */
export function printPins({ sources, dependencies, secrets, problems }: PinListing): string {
  const pins = sources.flatMap((source) =>
    source.pins.map(({ name, pin, uses, place }) => [
      safe(pin),
      safe(name ?? ''),
      uses.join(' '),
      `${safe(place.file)}, line ${place.line}`,
    ]),
  );
  const libraries = sources.flatMap(({ includes }) =>
    includes
      .filter(({ kind }) => kind === 'external')
      .map(({ written, library, place }) => [
        safe(library ?? written),
        safe(written),
        `${safe(place.file)}, line ${place.line}`,
      ]),
  );
  const pinned = dependencies.map(({ library, version, place }) => [
    safe(library),
    version ?? 'no version',
    `${safe(place.file)}, line ${place.line}`,
  ]);
  const numbers = sources.flatMap(({ constants }) =>
    constants.map(({ name, value, kind, place }) => [
      safe(name ?? ''),
      safe(value),
      kind,
      `${safe(place.file)}, line ${place.line}`,
    ]),
  );
  const parts = [
    listed('Pins', pins),
    listed('Libraries that the code asks for', libraries),
    listed('Libraries in manifests', pinned),
    listed('Numbers and settings', numbers),
    listed(
      'Credentials (their text is not shown)',
      secrets.map(({ kind, place }) => [kind, `${safe(place.file)}, line ${place.line}`]),
    ),
    ...problems.map(
      ({ place, message, remedy }) => `${wrapped(`${safe(place.file)}: ${safe(message)} ${safe(remedy)}`, '')}\n`,
    ),
  ];
  const text = parts.filter((part) => part !== '').join('\n');
  return text === '' ? 'No pins, libraries or numbers were found. Sources in C++ and Python are read.\n' : text;
}

function listed(title: string, rows: readonly string[][]): string {
  return rows.length === 0 ? '' : `${title}\n${inColumns(rows)}\n`;
}
