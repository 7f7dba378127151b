import type { Adoption } from '#app/adopt.ts';
import { settingsFile } from '#app/openBuild.ts';
import { count, inColumns, safe, wrapped } from './layout.ts';

/** What adopting found: roles with reasons, what is missing, what has no place, what would leak. */
export function printAdoption(adoption: Adoption, place: string): string {
  const { roles, missing, unplaced, leaks, leftOut, written } = adoption;
  const parts = [
    `What lies in ${safe(place)}\n${inColumns(roles.flatMap(rowsOfRole))}\n`,
    missing.length === 0
      ? ''
      : `Missing\n${inColumns(missing.map(({ role, default: name, why }) => [role, `${name} would be the place`, why]))}\n`,
    unplaced.length === 0
      ? ''
      : `Without a role\n${inColumns(unplaced.map(({ path, why }) => [safe(path), safe(why)]))}\nIf one of them is your guide, parts list or log, name it under roles in twicebuilt.yaml.\n`,
    leftOut.length === 0
      ? ''
      : wrapped(`Passed over: ${leftOut.map(({ path, why }) => `${safe(path)} (${why})`).join(', ')}.`, '').concat(
          '\n',
        ),
    `${leakWords(leaks)}\n`,
    written.length === 0
      ? 'It was adopted before; nothing was written.\n'
      : `Wrote ${written.join(' and ')}. Correct the roles in twicebuilt.yaml if need be.\n`,
    'Next: twicebuilt check DIR, which says what would halt a builder.\n',
  ];
  return parts.filter((part) => part !== '').join('\n');
}

/** A role with its places one below the other, and the reason under the last where the tool found it. */
function rowsOfRole({ role, places, why }: Adoption['roles'][number]): string[][] {
  const rows = places.map((place, at) => [at === 0 ? role : '', safe(place)]);
  return why === '' || why === `named in ${settingsFile}` ? rows : [...rows, ['', `  ${safe(why)}`]];
}

function leakWords({ positions, secrets }: Adoption['leaks']): string {
  if (positions === 0 && secrets === 0)
    return 'No picture carries a position, and no credential was found in the texts.';
  return wrapped(
    `Would leak if you shared the folder: ${count(positions, 'picture')} with a position, ${count(secrets, 'credential')} in texts. Published copies leave out both.`,
    '',
  );
}
