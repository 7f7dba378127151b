import sharp from 'sharp';
import { joined, latin, uint16, uint32 } from './pictureBytes.ts';

/** The wide profile that the library carries. */
export async function wideProfile(): Promise<Uint8Array> {
  const picture = sharp({ create: { width: 1, height: 1, channels: 3, background: '#fff' } }).withIccProfile('p3');
  const { icc } = await sharp(await picture.png().toBuffer()).metadata();
  if (!icc) throw new Error('The library wrote no profile.');
  return new Uint8Array(icc);
}

/** A profile as one is measured on somebody's screen: its name, maker and serial number are in it. */
export async function screenProfile(): Promise<Uint8Array> {
  const plain = await wideProfile();
  const view = new DataView(plain.buffer);
  const colours = Array.from({ length: view.getUint32(128) }, (_, i) => {
    const at = 132 + 12 * i;
    const start = view.getUint32(at + 4);
    return [latin(name(plain, at)), plain.subarray(start, start + view.getUint32(at + 8))] as const;
  }).filter(([tag]) => !['desc', 'cprt'].includes(name(tag, 0)));
  const tags = [
    [latin('desc'), words('Ada’s screen')],
    [latin('cprt'), words('measured by Ada')],
    [latin('mmod'), joined('mmod', uint32(0), 'LNTL', uint32(0x2701), uint32(77_001), new Uint8Array(16))],
    [latin('vcgt'), joined('vcgt', uint32(0), uint32(1), new Uint8Array(36))],
    ...colours,
  ] as const;
  let start = 132 + 12 * tags.length;
  const table: Uint8Array[] = [];
  const contents: Uint8Array[] = [];
  for (const [tag, data] of tags) {
    table.push(joined(tag, uint32(start), uint32(data.length)));
    contents.push(joined(data, new Uint8Array(-data.length & 3)));
    start += data.length + (-data.length & 3);
  }
  const header = plain.slice(0, 128);
  header.set(latin('LNTLad01'), 48);
  header.set(latin('Ada1'), 80);
  return joined(uint32(start), header.subarray(4), uint32(tags.length), ...table, ...contents);
}

function words(text: string): Uint8Array {
  const letters = joined(...[...text].map((letter) => uint16(letter.charCodeAt(0))));
  return joined('mluc', uint32(0), uint32(1), uint32(12), 'enUS', uint32(letters.length), uint32(28), letters);
}

function name(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}
