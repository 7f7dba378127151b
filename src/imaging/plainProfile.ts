import table from './colourProfiles.json';
import { latin1, viewOf } from './metadataBlock.ts';

const colourTags = new Set(table.colourTags);
const wordTags = new Set(table.wordTags);
const publicNames = new Set(table.publicNames);

const headerBytes = 128;
const entryBytes = 12;

interface Tag {
  readonly name: string;
  readonly data: Uint8Array;
}

/**
 * A colour profile that says how to show colours and nothing of whose screen it was measured on. Profiles of public
 * colour spaces come back as they are, the same object. Of any other, the colours stay to the last bit, while name, notices, device, dates
 * and further tags, among them serial numbers of screens, are gone. Null for bytes that are no profile.
 */
export function plainProfile(profile: Uint8Array): Uint8Array | null {
  const tags = tagsOf(profile);
  if (tags === null) return null;
  const known = tags.every(({ name }) => colourTags.has(name) || wordTags.has(name));
  const name = tags.find((tag) => tag.name === 'desc');
  if (known && name && publicNames.has(wordsOf(name.data))) return profile;
  return written(
    profile,
    tags.filter((tag) => colourTags.has(tag.name)),
  );
}

/** Tags of a profile; null where the bytes are none (ICC.1 7.2 and 7.3). */
function tagsOf(profile: Uint8Array): Tag[] | null {
  if (profile.length < headerBytes + 4 || latin1(profile.subarray(36, 40)) !== 'acsp') return null;
  const view = viewOf(profile);
  const count = view.getUint32(headerBytes);
  const tags: Tag[] = [];
  for (let i = 0; i < count; i++) {
    const at = headerBytes + 4 + i * entryBytes;
    if (at + entryBytes > profile.length) return null;
    const start = view.getUint32(at + 4);
    const end = start + view.getUint32(at + 8);
    if (start < headerBytes || end > profile.length) return null;
    tags.push({ name: latin1(profile.subarray(at, at + 4)), data: profile.subarray(start, end) });
  }
  return tags;
}

/** The words of a description: the first language of a multi-language text, or the ASCII part of an older one. */
function wordsOf(data: Uint8Array): string {
  const view = viewOf(data);
  const type = latin1(data.subarray(0, 4));
  if (type === 'mluc' && data.length >= 28) {
    const length = view.getUint32(20);
    const start = view.getUint32(24);
    return new TextDecoder('utf-16be').decode(data.subarray(start, start + length)).replace(/\0+$/, '');
  }
  if (type === 'desc' && data.length >= 12) {
    return latin1(data.subarray(12, 12 + view.getUint32(8))).replace(/\0+$/, '');
  }
  return '';
}

function written(profile: Uint8Array, colours: readonly Tag[]): Uint8Array {
  const isNew = (profile[8] ?? 0) >= 4;
  const text = isNew ? multiLanguage : plainDescription;
  const tags = [
    { name: 'desc', data: text('RGB') },
    { name: 'cprt', data: isNew ? multiLanguage('none') : plainText('none') },
    ...colours,
  ];
  const tableEnd = headerBytes + 4 + tags.length * entryBytes;
  const parts = placed(tags, tableEnd);
  const result = new Uint8Array(parts.end);
  result.set(plainHeader(profile));
  const view = viewOf(result);
  view.setUint32(0, result.length);
  view.setUint32(headerBytes, tags.length);
  for (const [i, { name, data }] of tags.entries()) {
    const at = headerBytes + 4 + i * entryBytes;
    const start = parts.starts.get(data) ?? 0;
    result.set(bytesOf(name), at);
    view.setUint32(at + 4, start);
    view.setUint32(at + 8, data.length);
    result.set(data, start);
  }
  return result;
}

/** Each tag's data on a multiple of four bytes (ICC.1 7.3.1). */
function placed(tags: readonly Tag[], from: number): { starts: Map<Uint8Array, number>; end: number } {
  const starts = new Map<Uint8Array, number>();
  let end = from;
  for (const { data } of tags) {
    starts.set(data, end);
    end += data.length + (-data.length & 3);
  }
  return { starts, end };
}

/** The header without date, makers, models and identifier (ICC.1 7.2). */
function plainHeader(profile: Uint8Array): Uint8Array {
  const header = profile.slice(0, headerBytes);
  // A date is required: the first of January 2000.
  header.set([7, 208, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0], 24);
  header.fill(0, 4, 8);
  header.fill(0, 48, 56);
  header.fill(0, 80, headerBytes);
  return header;
}

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

function multiLanguage(words: string): Uint8Array {
  const data = new Uint8Array(28 + 2 * words.length);
  const view = viewOf(data);
  data.set(bytesOf('mluc'));
  view.setUint32(8, 1);
  view.setUint32(12, entryBytes);
  data.set(bytesOf('enUS'), 16);
  view.setUint32(20, 2 * words.length);
  view.setUint32(24, 28);
  for (const [i, code] of bytesOf(words).entries()) view.setUint16(28 + 2 * i, code);
  return data;
}

/** The form of a description in older profiles: ASCII, then empty room for two other forms (ICC.1:2001-04 6.5.17). */
function plainDescription(words: string): Uint8Array {
  const data = new Uint8Array(12 + words.length + 1 + 78);
  data.set(bytesOf('desc'));
  viewOf(data).setUint32(8, words.length + 1);
  data.set(bytesOf(words), 12);
  return data;
}

function plainText(words: string): Uint8Array {
  const data = new Uint8Array(8 + words.length + 1);
  data.set(bytesOf('text'));
  data.set(bytesOf(words), 8);
  return data;
}
