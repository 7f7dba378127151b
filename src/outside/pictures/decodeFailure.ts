/** A plain sentence for what a decoder complained of. */
export function decodeFailure(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  const known = reasons.find(([pattern]) => pattern.test(message));
  if (known) return known[1];
  const firstLine = message.split('\n')[0] ?? '';
  return `The picture could not be decoded (${firstLine}). Open it in a picture program and save it again.`;
}

const damaged = 'The picture is damaged: it could not be decoded. Copy it again from the camera.';
const cutOff = 'The picture is cut off: the end of the file is missing. Copy it again from the camera.';

const reasons: readonly (readonly [RegExp, string])[] = [
  [/premature end|truncated|unexpected end|out of order read|VipsJpeg: .*EOF|not enough|end of (file|stream)/i, cutOff],
  [/timeout/i, 'The picture took too long to decode, and was given up. Save it again from a picture program.'],
  [/exceeds pixel limit/i, 'The picture has too many pixels. Make a smaller copy.'],
  [/unsupported image format|corrupt|bad|invalid|error in/i, damaged],
];
