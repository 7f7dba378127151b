import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { type IncomingHttpHeaders, request } from 'node:http';
import { networkInterfaces, tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serveFolder } from './serveFolder.ts';

let base: string;
let server: { url: string; close(): Promise<void> };

beforeAll(async () => {
  base = await mkdtemp(path.join(tmpdir(), 'twicebuilt-test-'));
  const root = path.join(base, 'site');
  await mkdir(path.join(root, 'steps'), { recursive: true });
  await mkdir(path.join(root, 'empty'));
  await mkdir(path.join(root, '.git'));
  await writeFile(path.join(base, 'secret.txt'), 'secret');
  await writeFile(path.join(base, 'site-other.txt'), 'secret');
  await writeFile(path.join(root, 'index.html'), '<!DOCTYPE html><title>Lamp</title>');
  await writeFile(path.join(root, 'steps', 'index.html'), 'steps');
  await writeFile(path.join(root, 'a b Ω.txt'), '0123456789');
  await writeFile(path.join(root, 'lamp.svg'), '<svg/>');
  await writeFile(path.join(root, 'nothing.css'), '');
  await writeFile(path.join(root, 'odd.xyz'), 'x');
  await writeFile(path.join(root, '.env'), 'secret');
  await writeFile(path.join(root, '.git', 'config'), 'secret');
  await symlink(path.join(base, 'secret.txt'), path.join(root, 'link.txt'));
  await symlink('.env', path.join(root, 'shown.txt'));
  await symlink('steps', path.join(root, 'linked'));
  server = await serveFolder(root);
});

afterAll(async () => {
  await server.close();
  await rm(base, { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

/** Sends a target exactly as written, which `fetch` would tidy up. */
function ask(target: string, options: { method?: string; headers?: Record<string, string> } = {}): Promise<Answer> {
  const { port } = new URL(server.url);
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path: target, agent: false, ...options }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          text: Buffer.concat(parts).toString('utf8'),
        }),
      );
      response.on('error', reject);
    });
    sent.on('error', reject);
    sent.end();
  });
}

describe('what is there', () => {
  test.each([
    ['/', 'text/html; charset=utf-8', '<!DOCTYPE html><title>Lamp</title>'],
    ['/index.html?x=1#y', 'text/html; charset=utf-8', '<!DOCTYPE html><title>Lamp</title>'],
    ['/steps/', 'text/html; charset=utf-8', 'steps'],
    ['/linked/index.html', 'text/html; charset=utf-8', 'steps'],
    ['/a%20b%20%CE%A9.txt', 'text/plain; charset=utf-8', '0123456789'],
    ['/lamp.svg', 'image/svg+xml', '<svg/>'],
    ['/nothing.css', 'text/css; charset=utf-8', ''],
    ['/odd.xyz', 'application/octet-stream', 'x'],
  ])('%s comes as %s', async (target, type, text) => {
    const answer = await ask(target);
    expect(answer).toMatchObject({ status: 200, text });
    expect(answer.headers).toMatchObject({ 'content-type': type, 'content-length': String(Buffer.byteLength(text)) });
  });

  test('HEAD tells the same and sends nothing', async () => {
    const answer = await ask('/lamp.svg', { method: 'HEAD' });
    expect(answer).toMatchObject({ status: 200, text: '' });
    expect(answer.headers['content-length']).toBe('6');
  });

  test('a folder without its slash is sent on to the one with it', async () => {
    const answer = await ask('/steps?x');
    expect(answer.status).toBe(301);
    expect(new URL(answer.headers.location ?? '', `${server.url}steps?x`).pathname).toBe('/steps/');
  });

  test('a part of a file is sent as one', async () => {
    const answer = await ask('/a%20b%20%CE%A9.txt', { headers: { Range: 'bytes=2-4' } });
    expect(answer).toMatchObject({ status: 206, text: '234' });
    expect(answer.headers).toMatchObject({ 'content-range': 'bytes 2-4/10', 'content-length': '3' });
    const beyond = await ask('/a%20b%20%CE%A9.txt', { headers: { Range: 'bytes=10-' } });
    expect(beyond.status).toBe(416);
    expect(beyond.headers['content-range']).toBe('bytes */10');
  });
});

describe('what is not shown', () => {
  test.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/steps/..%2f..%2fsecret.txt',
    '/..%5csecret.txt',
    '/../site-other.txt',
    '/./index.html',
    '//etc/passwd',
    '/%00',
    '/index.html%00.txt',
    '/%',
    '/%ff',
    '/.env',
    '/.git/config',
    '/%2egit/config',
    '/shown.txt',
    '/link.txt',
    '/empty/',
    '/empty',
    '/gone.html',
    '/index.html/',
    '/steps/index.html/x',
    'index.html',
    'http://elsewhere.example/index.html',
    '*',
    `/${'x'.repeat(300)}`,
  ])('%s is not found', async (target) => {
    const answer = await ask(target);
    expect([400, 404]).toContain(answer.status);
    expect(answer.text).not.toContain('secret');
    expect(answer.text).not.toContain(base);
  });

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])('%s is refused', async (method) => {
    const answer = await ask('/', { method });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('GET, HEAD');
  });

  test('a request under a foreign name is refused', async () => {
    const answer = await ask('/', { headers: { Host: 'attacker.example' } });
    expect(answer.status).toBe(421);
    expect(answer.text).not.toContain('Lamp');
    expect((await ask('/', { headers: { Host: 'localhost:1234' } })).status).toBe(200);
  });
});

test('every answer, refusals too, forbids guessing of types and foreign content', async () => {
  for (const target of ['/', '/gone', '/steps', '/lamp.svg']) {
    const { headers } = await ask(target);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-resource-policy': 'same-origin',
      'content-security-policy': expect.stringMatching(/^default-src 'none';.*frame-ancestors 'none'$/),
    });
    expect(headers['content-security-policy']).not.toMatch(/unsafe-eval|script-src[^;]*unsafe-inline|https?:|\*/);
  }
});

test('only this machine can connect', async () => {
  const { port } = new URL(server.url);
  const outer = Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .find(({ internal, family }) => !internal && family === 'IPv4');
  expect(new URL(server.url).hostname).toBe('127.0.0.1');
  if (outer) await expect(fetch(`http://${outer.address}:${port}/`)).rejects.toThrow();
});

test('a missing folder, a file and a taken port are told as failures', async () => {
  await expect(serveFolder(path.join(base, 'gone'))).rejects.toMatchObject({ code: 'not-found' });
  await expect(serveFolder(path.join(base, 'secret.txt'))).rejects.toMatchObject({ code: 'not-a-folder' });
  const port = Number(new URL(server.url).port);
  await expect(serveFolder(base, { port })).rejects.toMatchObject({
    name: 'Failure',
    hint: expect.stringMatching(/port/),
  });
});

test('a closed server answers no more and frees its port at once', async () => {
  const first = await serveFolder(path.join(base, 'site'));
  await (await fetch(first.url)).text();
  await first.close();
  await expect(fetch(first.url)).rejects.toThrow();
  const again = await serveFolder(path.join(base, 'site'), { port: Number(new URL(first.url).port) });
  expect((await fetch(again.url)).status).toBe(200);
  await again.close();
});
