import { expect, test } from 'vitest';
import { isLoopbackHost } from './isLoopbackHost.ts';

test.each([
  'localhost',
  'localhost:8080',
  'LOCALHOST:1',
  '127.0.0.1',
  '127.0.0.1:65535',
  '127.1.2.3',
  '[::1]',
  '[::1]:80',
])('%s is this machine', (host) => {
  expect(isLoopbackHost(host)).toBe(true);
});

test.each([
  undefined,
  '',
  'example.org',
  'localhost.example.org',
  'example.org:80',
  '127.0.0.1.example.org',
  '192.168.1.2',
  '0.0.0.0',
  '128.0.0.1',
  'localhost@example.org',
  'localhost:80:80',
  '::1',
])('%s is not', (host) => {
  expect(isLoopbackHost(host)).toBe(false);
});
