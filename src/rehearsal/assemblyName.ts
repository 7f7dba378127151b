/** A name of a sub-assembly as it is compared: 'The lamp head' and 'lamp  head' are one. */
export function assemblyName(written: string): string {
  return written
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .replace(/^(?:the|a|an|your) /, '');
}
