import type { Minutes } from './guide.ts';

/** Minutes (0 or more, rounded to whole ones) in words: `25 min`, `1 h 5 min`, `24 h`, `3 days`. */
export function formatMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole >= 2 * 1440 && whole % 1440 === 0) return `${whole / 1440} days`;
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** Work and waiting in words: `25 min by hand, then 2 h of waiting`. */
export function formatWork(minutes: Minutes): string {
  if (minutes.wait === 0) return formatMinutes(minutes.hands);
  if (minutes.hands === 0) return `${formatMinutes(minutes.wait)} of waiting`;
  return `${formatMinutes(minutes.hands)} by hand, then ${formatMinutes(minutes.wait)} of waiting`;
}
