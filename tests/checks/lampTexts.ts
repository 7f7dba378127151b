import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const lamp = fileURLToPath(new URL('../../demo/tide-lamp/', import.meta.url));

/** The texts of the demo lamp by path; pictures are left out. */
export const lampTexts: ReadonlyMap<string, string> = new Map(
  ['.', 'firmware', 'design']
    .flatMap((folder) =>
      readdirSync(path.join(lamp, folder), { withFileTypes: true }).map((entry) => ({ folder, entry })),
    )
    .filter(({ entry }) => entry.isFile() && /\.(?:md|csv|yaml|cpp|h|ini|txt|scad)$/.test(entry.name))
    .map(({ folder, entry }) => path.posix.join(folder, entry.name))
    .map((file) => [file, readFileSync(path.join(lamp, file), 'utf8')]),
);
