import { createReadStream } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { pipeline } from 'node:stream/promises';
import { contentType } from './contentType.ts';
import { findFile } from './findFile.ts';
import { isLoopbackHost } from './isLoopbackHost.ts';
import { parseRange } from './parseRange.ts';

/** What every answer carries. The policy lets pages use their own files and inline styles, and no scripts from afar. */
const safeHeaders = {
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'X-Frame-Options': 'DENY',
  'Cache-Control': 'no-store',
  'Content-Security-Policy':
    "default-src 'none'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; script-src 'self'; font-src 'self'; media-src 'self'; connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
} as const;

/** Answers one request for a file below `root`, which is a real path. */
export async function answer(root: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  for (const [name, value] of Object.entries(safeHeaders)) response.setHeader(name, value);
  try {
    await answerSafely(root, request, response);
  } catch {
    // The browser went away, or the file could not be read: neither may end the program.
    if (response.headersSent) response.destroy();
    else refuse(response, 500, 'This file could not be read.');
  }
}

async function answerSafely(root: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  // A page elsewhere can make its own name point here; the name in the request gives it away.
  if (!isLoopbackHost(request.headers.host)) return refuse(response, 421, 'Only this machine may ask.');
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return refuse(response, 405, 'Only reading is possible here.');
  }
  const found = await findFile(root, request.url ?? '/');
  if (found.is === 'nothing') return refuse(response, 404, 'There is no such page.');
  if (found.is === 'folder') {
    response.setHeader('Location', found.location);
    return refuse(response, 301, 'This is a folder.');
  }
  const file = await open(found.path, 'r');
  try {
    await sendFile(file, found.path, request, response);
  } finally {
    await file.close();
  }
}

async function sendFile(
  file: FileHandle,
  path: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const { size } = await file.stat();
  const range = parseRange(request.headers.range, size);
  response.setHeader('Accept-Ranges', 'bytes');
  if (range === 'unsatisfiable') {
    response.setHeader('Content-Range', `bytes */${size}`);
    return refuse(response, 416, 'The file has no such part.');
  }
  const [start, end] = range ?? [0, size - 1];
  response.setHeader('Content-Type', contentType(path));
  response.setHeader('Content-Length', end - start + 1);
  if (range) response.setHeader('Content-Range', `bytes ${start}-${end}/${size}`);
  response.writeHead(range ? 206 : 200);
  if (request.method === 'HEAD' || size === 0) response.end();
  else await pipeline(createReadStream('', { fd: file, start, end, autoClose: false }), response);
}

function refuse(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(`${text}\n`);
}
