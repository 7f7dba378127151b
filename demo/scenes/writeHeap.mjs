// Writes the build of the demo as the heap that it was before anybody put it in order: pictures as two cameras and a
// message named them, some twice, lists with other headers and separators, notes without headings, code with the
// Wi-Fi password in it, and no settings. The same demo gives the same heap.
// Usage: node demo/scenes/writeHeap.mjs FOLDER

import { copyFile, mkdir, readdir, readFile, utimes, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import sharp from 'sharp';
import { randomStream } from './randomStream.mjs';

const build = join(dirname(fileURLToPath(import.meta.url)), '..', 'tide-lamp');
const [heap] = process.argv.slice(2);
if (heap === undefined) throw new Error('Say where: node demo/scenes/writeHeap.mjs FOLDER');
await mkdir(heap, { recursive: true });
if ((await readdir(heap)).length > 0) throw new Error(`${heap} is not empty.`);
/** Everything was copied off the phone on one evening, so the dates of the files tell nothing. */
const copied = new Date('2026-11-20T18:30:00Z');

await writePictures();
await writeText('stuff ordered.csv', partsOrdered(await readText('parts.csv')));
await writeText('cables.tsv', cables(await readText('wiring.csv')));
await writeText('notes.txt', notes(await readText('log.md'), await readText('guide.md')));
await writeText('code/lamp_final2/lamp_final2.ino', await sketch());
for (const name of ['pins.h', 'tide.h']) {
  await writeText(`code/lamp_final2/${name}`, await readText(`firmware/${name}`));
}
for (const [from, to] of [
  ['base', 'base v3'],
  ['ring-plate', 'ring plate'],
  ['diffuser', 'dome NEW'],
]) {
  await writeText(`print/${to}.scad`, await readText(`design/${from}.scad`));
}

/** The phone counts its pictures, the older one names them by the time, and a message drops name and camera data. */
async function writePictures() {
  const random = randomStream('heap');
  let count = 214;
  let sent = 0;
  for (const name of (await readdir(join(build, 'photos'))).sort()) {
    const photo = join(build, 'photos', name);
    const isPhone = name.startsWith('IMG_');
    if (isPhone) count += 1 + Math.floor(random() * 3);
    const stamp = name.replace(/(\d{4})(\d\d)(\d\d)_(\d\d)(\d\d)(\d\d)/, '$1-$2-$3 $4.$5.$6');
    const named = isPhone ? `DSC00${count}.JPG` : stamp;
    await copyPicture(photo, isPhone ? `phone backup/${named}` : `old phone/${named}`);
    const chance = random();
    if (chance < 0.12) await copyPicture(photo, `to send/${named.replace('.', ' (1).')}`);
    else if (chance < 0.2) {
      const bytes = await sharp(photo).rotate().resize({ width: 1080 }).jpeg({ quality: 72 }).toBuffer();
      await writeBytes(`to send/image${sent++}.jpeg`, bytes);
    }
  }
}

/** The list as a spreadsheet of another language writes it: semicolons, commas in the prices, other words, no fuss. */
function partsOrdered(text) {
  const rows = parse(text, { columns: true });
  const header = [
    'Pos.',
    'Referenz',
    'Menge',
    'Beschreibung',
    'Wert',
    'Bauform',
    'Bestellnummer',
    'Lieferant',
    'Preis',
  ];
  const lines = rows.map((row, n) => [
    n + 1,
    row.Reference,
    row.Quantity,
    row.Description,
    row.Value,
    row.Package,
    row['Maker part number'],
    row.Supplier,
    row.Price.replace('.', ','),
  ]);
  return [header, ...lines].map((cells) => cells.map(quoted).join(';')).join('\r\n');
}

function quoted(cell) {
  return /[;"]/.test(`${cell}`) ? `"${`${cell}`.replaceAll('"', '""')}"` : cell;
}

function cables(text) {
  const rows = parse(text, { columns: true });
  const header = ['Start', 'Destination', 'Wire colour', 'Gauge', 'Length'];
  return [header, ...rows.map((row) => [row.from, row.to, row.colour, row.gauge, row.length])]
    .map((cells) => cells.join('\t'))
    .join('\n');
}

/** What was written down as it came: evenings first, then the steps, all in plain lines. */
function notes(log, guide) {
  const evenings = log.split(/^## /m).slice(1);
  const steps = guide.split(/^### /m).slice(1);
  const evening = (text) => {
    const [date, ...lines] = text.trim().split('\n');
    const [, month, day, time] = /^\d+-(\d+)-(\d+) (.*)$/.exec(date);
    return `${Number(day)}.${Number(month)}. ${time}\n${plain(lines).join('\n')}`;
  };
  // Nobody labels a note that is for nobody else.
  const plain = (lines) =>
    lines.filter((line) => line !== '' && !line.startsWith('step:')).map((line) => line.replace(/^[a-z]+: /, ''));
  const step = (text) => {
    const [title, ...lines] = text.split(/^## /m)[0].trim().split('\n');
    const said = lines.filter((line) => line !== '' && !/^(- |!\[|\||\*\*)/.test(line));
    return `then: ${title.toLowerCase()}\n${said.join('\n')}`;
  };
  return `${[...evenings.map(evening), ...steps.map(step)].join('\n\n')}\n`;
}

/** The program in one piece, as it was before the network's name and password got a file of their own. */
async function sketch() {
  const main = await readText('firmware/main.cpp');
  const own = '// home network\n#define WIFI_NAME "Saltpan 4"\n#define WIFI_PASSWORD "eelgrass-at-ebb-71"';
  const line = '#include "secrets.h"';
  if (!main.includes(line)) throw new Error(`firmware/main.cpp no longer says ${line}.`);
  return main.replace(line, own);
}

function readText(file) {
  return readFile(join(build, file), 'utf8');
}

async function copyPicture(from, to) {
  await mkdir(dirname(join(heap, to)), { recursive: true });
  await copyFile(from, join(heap, to));
  await utimes(join(heap, to), copied, copied);
}

function writeText(to, text) {
  return writeBytes(to, Buffer.from(text));
}

async function writeBytes(to, bytes) {
  await mkdir(dirname(join(heap, to)), { recursive: true });
  await writeFile(join(heap, to), bytes);
  await utimes(join(heap, to), copied, copied);
}
