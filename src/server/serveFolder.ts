import { realpath, stat } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Failure } from '#core/failure.ts';
import { answer } from './answer.ts';

/** Only this machine can reach it. */
const address = '127.0.0.1';

/**
 * Shows a folder's files in a browser on this machine, read-only. `port` 0, the default, takes a free one. Throws
 * `Failure` where the folder is missing or the port is taken. Resolves once it listens.
 */
export async function serveFolder(
  root: string,
  options: { port?: number } = {},
): Promise<{ url: string; close(): Promise<void> }> {
  const folder = await realRoot(root);
  const server = createServer((request, response) => void answer(folder, request, response));
  await listen(server, options.port ?? 0);
  const { port } = server.address() as AddressInfo;
  return { url: `http://${address}:${port}/`, close: () => close(server) };
}

async function realRoot(root: string): Promise<string> {
  try {
    const real = await realpath(root);
    if ((await stat(real)).isDirectory()) return real;
  } catch (cause) {
    throw new Failure('not-found', `There is no folder '${root}' to show.`, 'Publish the guide first.', { cause });
  }
  throw new Failure('not-a-folder', `'${root}' is a file, not a folder.`, 'Name the folder to show.');
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (cause) => {
      reject(
        new Failure('not-allowed', `Port ${port} cannot be used: ${cause.message}.`, 'Choose another port.', { cause }),
      );
    });
    server.listen(port, address, resolve);
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    // A browser keeps its connections open long after the last answer.
    server.closeAllConnections();
  });
}
