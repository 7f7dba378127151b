import type { Build } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import type { RoleName } from '#core/settings.ts';

/** The text files that play one of the roles, as files, in folders, or with one of their sections. */
export function filesPlaying(build: Build, ...roles: readonly RoleName[]): Set<Path> {
  const places = build.roles.filter(({ role }) => roles.includes(role)).flatMap((role) => role.places);
  const names = places.map((place) => (place.split('#')[0] ?? place).replace(/^\.\//, '').replace(/\/$/, ''));
  return new Set(
    [...build.texts.keys()].filter((file) =>
      names.some((name) => name === '' || file === name || file.startsWith(`${name}/`)),
    ),
  );
}
