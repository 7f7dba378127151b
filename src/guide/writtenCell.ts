import type { Part, PartColumn } from '#core/part.ts';
import type { Path } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';

/** A cell of a part's row as the maker wrote it, without the quotes of a file of cells; empty where there is none. */
export function writtenCell(part: Part, column: PartColumn, texts: ReadonlyMap<Path, SourceText>): string {
  const place = part.cells[column];
  const written = place === undefined ? '' : (texts.get(place.file)?.text.slice(...place.span) ?? '');
  const [, quoted] = /^\s*"(.*)"\s*$/su.exec(written) ?? [];
  return (quoted?.replaceAll('""', '"') ?? written).trim();
}
