import type { Leaks } from '#core/shot.ts';
import type { Field } from './metadataBlock.ts';
import table from './privateFields.json';

const groupOfName = new Map(
  Object.entries(table.groups).flatMap(([group, names]) => names.map((name) => [name, group] as const)),
);
/** Groups in the order of the table, position before and unnamed data after them. */
const order = ['position', ...Object.keys(table.groups), 'screen profile', 'appended data', 'other data'];

/** What the fields of a file give away. `more` names groups that were found by other means than a field. */
export function leaksOf(fields: readonly Field[], more: Iterable<string> = []): Leaks {
  const groups = new Set(more);
  for (const { name, value } of fields) {
    if (isBlank(value)) continue;
    const group = groupOfName.get(spelling(name));
    if (group !== undefined) groups.add(group);
    if (holdsFilePath(value)) groups.add('file path');
  }
  if (hasPosition(fields)) groups.add('position');
  return {
    position: groups.has('position'),
    fields: [...groups].sort((a, b) => order.indexOf(a) - order.indexOf(b)),
  };
}

function spelling(name: string): string {
  return name.toLowerCase().replaceAll(/[^a-z0-9]/g, '');
}

/** Cameras fill fields that they have nothing for with spaces or zeros. */
function isBlank(value: string): boolean {
  return /^[\s0\0]*$/.test(value);
}

/** An absolute path of a user's disk: it often carries a person's name. */
function holdsFilePath(value: string): boolean {
  return /(^|[\s"'=(:,])(\/(home|Users|Volumes|mnt|media|private)\/[^\s/]|[A-Za-z]:[\\/][^\s\\/]|\\\\[\w.-]+\\|file:\/\/\/)/.test(
    value.slice(0, 10_000),
  );
}

/** Both coordinates plausible and not both zero: an empty or zeroed block gives nothing away. */
function hasPosition(fields: readonly Field[]): boolean {
  const values = (pattern: RegExp) =>
    fields.filter(({ name }) => pattern.test(spelling(name))).map(({ value }) => degreesOf(value));
  const latitudes = values(/^gps(dest)?latitude$/);
  const longitudes = values(/^gps(dest)?longitude$/);
  return (
    isPlace(latitudes, longitudes) ||
    fields.some(({ name, value }) => {
      const pair = placeFields.has(spelling(name)) ? pairOf(value) : null;
      return pair !== null && isPlace([pair[0]], [pair[1]]);
    })
  );
}

/** Fields that hold both coordinates, as ISO 6709 (`+51.5074-000.1278+011/`) or as two numbers. */
const placeFields = new Set([
  'xyz',
  'gpscoordinates',
  'gpsposition',
  'geolocation',
  'comapplequicktimelocationiso6709',
]);

function isPlace(latitudes: readonly (number | null)[], longitudes: readonly (number | null)[]): boolean {
  const some = (values: readonly (number | null)[], limit: number) =>
    values.filter((value): value is number => value !== null && Math.abs(value) <= limit);
  const north = some(latitudes, 90);
  const east = some(longitudes, 180);
  return north.length > 0 && east.length > 0 && [...north, ...east].some((value) => value !== 0);
}

/** Degrees from `51,30.5N`, `51,30,27W`, `51.5`, or `51 deg 30' 27.1" N`; null for anything else. */
function degreesOf(text: string): number | null {
  const match = /^\s*([+-]?\d+(?:\.\d+)?)(?:[^\d.+-]+(\d+(?:\.\d+)?))?(?:[^\d.]+(\d+(?:\.\d+)?))?\D*$/.exec(text);
  if (!match) return null;
  const [, degrees, minutes = '0', seconds = '0'] = match;
  return Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
}

function pairOf(text: string): readonly [number, number] | null {
  const match = /^\s*([+-]?\d+(?:\.\d+)?)[\s,]*([+-]?\d+(?:\.\d+)?)/.exec(text);
  if (!match) return null;
  return [iso6709(match[1] ?? '', 2), iso6709(match[2] ?? '', 3)];
}

/** ISO 6709 allows degrees, degrees with minutes, or with seconds too, told apart by the number of digits. */
function iso6709(text: string, degreeDigits: number): number {
  const digits = /^[+-]?(\d+)/.exec(text)?.[1]?.length ?? 0;
  if (digits <= degreeDigits) return Number(text);
  const value = Math.abs(Number(text));
  if (digits === degreeDigits + 2) return Math.floor(value / 100) + (value % 100) / 60;
  return Math.floor(value / 10_000) + (Math.floor(value / 100) % 100) / 60 + (value % 100) / 3600;
}
