/**
 * The first and last byte that a Range header asks for (RFC 9110 14.1.2). Null where the whole file is to be sent:
 * no header, another unit, several ranges, or a header that makes no sense.
 */
export function parseRange(
  header: string | undefined,
  size: number,
): readonly [number, number] | 'unsatisfiable' | null {
  const match = /^bytes=(\d*)-(\d*)$/i.exec(header?.trim() ?? '');
  if (!match) return null;
  const [, first = '', last = ''] = match;
  if (first === '' && last === '') return null;
  if (first === '') {
    const length = Number(last);
    return length === 0 || size === 0 ? 'unsatisfiable' : [Math.max(0, size - length), size - 1];
  }
  if (last !== '' && Number(last) < Number(first)) return null;
  if (Number(first) >= size) return 'unsatisfiable';
  return [Number(first), last === '' ? size - 1 : Math.min(Number(last), size - 1)];
}
