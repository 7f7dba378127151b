import type { Field } from './metadataBlock.ts';
import { latin1, viewOf } from './metadataBlock.ts';

/** Names of data sets of record 2 (IPTC-NAA Information Interchange Model 4.2, section 6). */
const names: Readonly<Record<number, string>> = {
  5: 'Title',
  25: 'Keywords',
  65: 'Software',
  80: 'Creator',
  85: 'AuthorsPosition',
  90: 'City',
  92: 'Location',
  95: 'State',
  101: 'Country',
  105: 'Headline',
  110: 'Credit',
  118: 'Contact',
  120: 'Caption',
  122: 'CaptionWriter',
};

/** The fields of an IPTC block that can say who, where or what; others are passed over. */
export function readIptc(bytes: Uint8Array): Field[] {
  const view = viewOf(bytes);
  const fields: Field[] = [];
  for (let at = 0; at + 5 <= bytes.length && bytes[at] === 0x1c; ) {
    const record = view.getUint8(at + 1);
    const name = names[view.getUint8(at + 2)];
    const size = view.getUint16(at + 3);
    // The top bit announces an extended length, which only embedded objects use.
    if (size >= 0x8000) break;
    const value = latin1(bytes.subarray(at + 5, at + 5 + size));
    if (record === 2 && name !== undefined) fields.push({ name, value });
    at += 5 + size;
  }
  return fields;
}
