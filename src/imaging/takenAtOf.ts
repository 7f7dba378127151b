import type { Field } from './metadataBlock.ts';

/** Fields that say when a picture was taken, with the field for the zone, the most reliable first. */
const sources = [
  ['DateTimeOriginal', 'OffsetTimeOriginal'],
  ['com.apple.quicktime.creationdate', null],
  ['DateTimeDigitized', 'OffsetTimeDigitized'],
  ['DateCreated', null],
  ['CreateDate', null],
] as const;

/**
 * When a picture was taken: ISO 8601 local time, to the second, with its zone where the file gives one; null where
 * no field holds a real date. Dates of saving or editing do not count.
 */
export function takenAtOf(fields: readonly Field[]): string | null {
  for (const [name, zoneName] of sources) {
    for (const field of fields.filter((field) => field.name === name)) {
      const time = timeOf(field.value);
      if (time === null) continue;
      const zone = fields.find((other) => other.name === zoneName)?.value ?? '';
      return time.zone ? time.local + time.zone : time.local + zoneOf(zone);
    }
  }
  return null;
}

function timeOf(text: string): { local: string; zone: string } | null {
  const match =
    /^\s*(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d)(?::(\d\d))?(?:\.\d+)?\s*(Z|[+-]\d\d:?\d\d)?[\s\0]*$/.exec(text);
  if (!match) return null;
  const [, year = '', month = '', day = '', hour = '', minute = '', second = '00', zone = ''] = match;
  const local = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  // A date that the calendar does not have comes back as another one.
  const date = new Date(`${local}Z`);
  if (Number(year) < 1800 || Number.isNaN(date.getTime()) || !date.toISOString().startsWith(local)) return null;
  return { local, zone: zoneOf(zone) };
}

function zoneOf(text: string): string {
  const match = /^\s*(?:(Z)|([+-])(\d\d):?(\d\d))[\s\0]*$/.exec(text);
  if (!match) return '';
  const [, utc, sign, hours, minutes] = match;
  return utc ?? `${sign}${hours}:${minutes}`;
}
