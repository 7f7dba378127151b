/** One named value of a file's metadata, as text. */
export interface Field {
  readonly name: string;
  readonly value: string;
}

/** A piece of a picture's or clip's file that is no pixels. */
export type MetadataBlock =
  /** A TIFF structure with Exif tags. */
  | { readonly kind: 'exif'; readonly tiff: Uint8Array }
  /** An XMP packet. */
  | { readonly kind: 'xmp'; readonly text: string }
  /** Records of the IPTC Information Interchange Model. */
  | { readonly kind: 'iptc'; readonly bytes: Uint8Array }
  | { readonly kind: 'field'; readonly field: Field }
  /** A text that a zlib stream holds. */
  | { readonly kind: 'deflated'; readonly name: string; readonly bytes: Uint8Array }
  /** A second, often older or uncropped, picture; null where its bytes lie elsewhere in the file. */
  | { readonly kind: 'preview'; readonly bytes: Uint8Array | null }
  /** What follows the end of the picture. */
  | { readonly kind: 'appended'; readonly bytes: Uint8Array }
  /** Data of a camera or program that no standard explains. */
  | { readonly kind: 'other'; readonly name: string };

/** Bytes as Latin-1 text. */
export function latin1(bytes: Uint8Array): string {
  return new TextDecoder('latin1').decode(bytes);
}

/** Text up to the first zero byte, and where the next thing starts. */
export function zeroTerminated(bytes: Uint8Array, start: number): { readonly text: string; readonly next: number } {
  const zero = bytes.indexOf(0, start);
  const end = zero === -1 ? bytes.length : zero;
  return { text: latin1(bytes.subarray(start, end)), next: Math.min(end + 1, bytes.length) };
}

/** A view for reading numbers out of bytes. */
export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
