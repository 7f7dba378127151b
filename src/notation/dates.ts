/** Longer texts are no single date. */
const longest = 40;

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/**
 * A date, with a time where one is stated, in ISO 8601: `2026-11-02`, `2026/11/02`, `2 Nov 2026`, `Nov 2, 2026`,
 * `02.11.2026` (day first), `2026-11-02 19:30` → `2026-11-02T19:30`. Null where it is none, where the calendar has no
 * such day, and where day and month can be told apart in two ways (`03/04/2026`).
 */
export function parseDate(text: string): string | null {
  if (text.length > longest) return null;
  const plain = text.normalize('NFKC').replace(/\s+/gu, ' ').trim();
  const [, date = '', time = ''] =
    /^(.*?)(?:(?:T|,? (?:at )?)(\d{1,2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?(?: ?(?:Z|[+-]\d{2}:?\d{2}))?))?$/u.exec(plain) ??
    [];
  const day = dayOf(date);
  if (day === null || time === '') return day;
  const clock = clockOf(time);
  return clock === null ? null : `${day}T${clock}`;
}

function dayOf(text: string): string | null {
  return yearFirst(text) ?? dayFirst(text) ?? slashed(text) ?? named(text);
}

function yearFirst(text: string): string | null {
  const [, y, m, d] = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/u.exec(text)?.filter((_, i) => i !== 2) ?? [];
  const [, by, bm, bd] = /^(\d{4})(\d{2})(\d{2})$/u.exec(text) ?? [];
  return iso(y ?? by, m ?? bm, d ?? bd);
}

function dayFirst(text: string): string | null {
  const [, d, m, y] = /^(\d{1,2})\. ?(\d{1,2})\. ?(\d{4})$/u.exec(text) ?? [];
  return iso(y, m, d);
}

function slashed(text: string): string | null {
  const [, a, , b, y] = /^(\d{1,2})([/-])(\d{1,2})\2(\d{4})$/u.exec(text) ?? [];
  const [dayMonth, monthDay] = [iso(y, b, a), iso(y, a, b)];
  return dayMonth === null || monthDay === null || dayMonth === monthDay ? (dayMonth ?? monthDay) : null;
}

function named(text: string): string | null {
  const plain = text.toLowerCase().replace(/^(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?,? /u, '');
  const [, d, m, y] = /^(\d{1,2})(?:st|nd|rd|th|\.)?[ -](?:of )?([a-z]{3,9})\.?[ -](\d{4})$/u.exec(plain) ?? [];
  if (m !== undefined) return iso(y, monthOf(m), d);
  const [, am, ad, ay] = /^([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/u.exec(plain) ?? [];
  return iso(ay, monthOf(am ?? ''), ad);
}

const monthNames = 'january february march april may june july august september october november december'.split(' ');

function monthOf(name: string): string | undefined {
  const index = name === 'sept' ? 8 : monthNames.findIndex((month, i) => month === name || months[i] === name);
  return index < 0 ? undefined : String(index + 1);
}

function iso(year: string | undefined, month: string | undefined, day: string | undefined): string | null {
  const [y, m, d] = [Number(year), Number(month), Number(day)];
  if (!(y >= 1 && m >= 1 && m <= 12 && d >= 1 && d <= daysIn(y, m))) return null;
  return `${String(y).padStart(4, '0')}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

function clockOf(time: string): string | null {
  const [, h = '', rest = '', zone = ''] =
    /^(\d{1,2})(:\d{2}(?::\d{2}(?:\.\d+)?)?) ?(Z|[+-]\d{2}:?\d{2})?$/u.exec(time) ?? [];
  const [, minutes = '', seconds = '0'] = rest.split(':');
  if (h === '' || Number(h) > 23 || Number(minutes) > 59 || Number(seconds) >= 60) return null;
  return h.padStart(2, '0') + rest + (zone === 'Z' ? 'Z' : zone.replace(/^(...):?/u, '$1:'));
}
