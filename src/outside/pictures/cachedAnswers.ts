import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { CachePort, CleanReport, ShotFacts, ShotMeasures } from '#app/ports.ts';
import type { AssetWant } from '#core/shot.ts';
import { jobVersion, measureVersion } from './jobVersion.ts';

/** A cached inspection; null where there is none. */
export async function inspectFromCache(cache: CachePort, hash: string): Promise<ShotFacts | null> {
  const data = await cache.get(inspectKey(hash));
  return data && JSON.parse(new TextDecoder().decode(data));
}

export async function inspectToCache(cache: CachePort, hash: string, facts: ShotFacts): Promise<void> {
  await cache.put(inspectKey(hash), new TextEncoder().encode(JSON.stringify(facts)));
}

/** Measures of a picture that were kept; null where there are none. */
export async function measuresFromCache(cache: CachePort, hash: string): Promise<ShotMeasures | null> {
  const data = await cache.get(measureKey(hash));
  return data && JSON.parse(new TextDecoder().decode(data));
}

export async function measuresToCache(cache: CachePort, hash: string, measures: ShotMeasures): Promise<void> {
  await cache.put(measureKey(hash), new TextEncoder().encode(JSON.stringify(measures)));
}

/** A cached copy, under the name now wanted; null where there is none. */
export async function cleanFromCache(
  cache: CachePort,
  hash: string,
  want: AssetWant,
  name: string,
): Promise<CleanReport | null> {
  const entry = await cache.get(cleanKey(hash, want));
  if (!entry) return null;
  // One line of JSON, then the picture.
  const end = entry.indexOf(10);
  const { width, height, removed } = JSON.parse(new TextDecoder().decode(entry.subarray(0, end)));
  const data = new Uint8Array(entry.subarray(end + 1));
  return { asset: { ...want, width, height, name, bytes: data.length }, data, removed };
}

export async function cleanToCache(
  cache: CachePort,
  hash: string,
  want: AssetWant,
  report: CleanReport,
): Promise<void> {
  const { width, height } = report.asset;
  const line = new TextEncoder().encode(`${JSON.stringify({ width, height, removed: report.removed })}\n`);
  await cache.put(cleanKey(hash, want), Buffer.concat([line, report.data]));
}

function inspectKey(hash: string): string {
  return `inspect ${jobVersion} ${decoderVersions()} ${hash}`;
}

function measureKey(hash: string): string {
  return `measure ${measureVersion} ${decoderVersions()} ${hash}`;
}

function cleanKey(hash: string, { width, format }: AssetWant): string {
  return `clean ${jobVersion} ${decoderVersions()} ${hash} ${width} ${format}`;
}

let versions: string | undefined;

/** Versions of the libraries that answers depend on, read without loading them. */
function decoderVersions(): string {
  versions ??= ['sharp', 'exifreader', 'heic-decode'].map((name) => `${name}@${versionOf(name)}`).join(' ');
  return versions;
}

function versionOf(name: string): string {
  const entry = createRequire(import.meta.url).resolve(name);
  const folder = entry.slice(0, entry.lastIndexOf(`${path.sep}${name}${path.sep}`) + name.length + 1);
  return String(JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')).version);
}
