/** The element of a heading of that rank; HTML knows six. */
export function headingAt(level: number): string {
  return `h${Math.min(Math.max(level, 1), 6)}`;
}
