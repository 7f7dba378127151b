import { type Role, type RolePlace, roleNames } from '#core/settings.ts';
import { readWords, type SettingContext } from './settingValue.ts';
import type { YamlEntry, YamlValue } from './yamlRecord.ts';

/** Roles, each with one place or a list of places inside the folder, in the order of the file. */
export function readRoles(value: YamlValue, file: string, context: SettingContext): Role[] {
  const entries = context.reader.entriesOf(value);
  if (entries === null) {
    context.misfit(value, 'roles with their places, such as `guide: guide.md`');
    return [];
  }
  return entries.flatMap((entry) => readRole(entry, file, context) ?? []);
}

function readRole({ key, value, node }: YamlEntry, file: string, context: SettingContext): Role | null {
  const role = roleNames.find((name) => name === key.trim().toLowerCase());
  if (role === undefined) {
    context.misfit(node, `a role (${roleNames.join(', ')})`);
    return null;
  }
  const places: RolePlace[] = [];
  for (const written of readWords(value, context, 'a file, a folder or a list of them')) {
    if (isInside(written)) places.push(written.replace(/^\.\//, ''));
    else context.misfit(value, 'a path inside the build folder, with forward slashes');
  }
  return { role, places, why: `named in ${file}` };
}

function isInside(place: string): boolean {
  return !/^([/\\]|[a-z]:|~)|\\|(^|\/)\.\.(\/|$)/i.test(place);
}
