import { spawnSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';

const root = path.resolve(import.meta.dirname, '../..');
const scenes = path.join(root, 'demo/scenes');

/** Programs that rendering needs and that are not here. */
export const missing = ['povray', 'exiftool'].filter((program) => spawnSync('which', [program]).status !== 0);

/** What is known of a frame from the geometry of its scene; places are shares of the upright picture. */
export interface FrameTruth {
  readonly name: string;
  readonly taken: string;
  readonly subject: { readonly box: Box; readonly whole: boolean };
  readonly board: { readonly side: string; readonly corners: readonly (readonly [number, number])[] | null } | null;
  readonly focus: 'sharp' | 'soft';
  readonly exposure: number;
  readonly burst: { readonly name: string; readonly best: boolean } | null;
  readonly fresh?: readonly { readonly what: string; readonly box: Box }[];
}

export type Box = readonly [left: number, top: number, width: number, height: number];

/** A picture upright, as red, green and blue bytes. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Buffer;
}

/** Renders a set, or one frame or scene of it, small into a folder. */
export function render(out: string, args: readonly string[]): void {
  const script = path.join(scenes, 'render.mjs');
  const cache = path.join(out, 'traces');
  runScript([script, '--preview', '--out', out, '--cache', cache, ...args]);
}

export async function readTruth(set: string, to: string): Promise<FrameTruth[]> {
  runScript([path.join(scenes, 'writeTruth.mjs'), '--set', set, '--to', to]);
  return JSON.parse(await readFile(to, 'utf8'));
}

export async function readPixels(file: string): Promise<Pixels> {
  const { data, info } = await sharp(file).rotate().raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data };
}

function runScript(args: readonly string[]): void {
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}:\n${stderr.slice(-2000)}`);
}
