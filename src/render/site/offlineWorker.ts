import { digestOf } from '#core/digest.ts';
import type { Asset } from '#core/shot.ts';
import worker from './worker/offline.ts?script';

/** Of each picture one copy is kept: the widest that is no wider than this. */
const keptWidth = 960;

/** The worker that keeps a guide in the browser, with the list of what it keeps. */
export function offlineWorker(pages: readonly { path: string; text: string }[], assets: readonly Asset[]): string {
  const files = ['./', ...pages.map(({ path }) => path), ...keptCopies(assets)];
  const edition = digestOf(JSON.stringify([files, pages.map(({ text }) => text)])).slice(0, 16);
  return `self.guide=${JSON.stringify({ edition, files })};\n${worker}`;
}

function keptCopies(assets: readonly Asset[]): string[] {
  return [...new Set(assets.map(({ shot }) => shot))].flatMap((shot) => {
    const sorted = assets.filter((asset) => asset.shot === shot).sort((a, b) => a.width - b.width);
    return (sorted.findLast(({ width }) => width <= keptWidth) ?? sorted[0])?.name ?? [];
  });
}
