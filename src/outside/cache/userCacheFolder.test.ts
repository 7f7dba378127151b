import { expect, test } from 'vitest';
import { userCacheFolder } from './userCacheFolder.ts';

test('the cache folder follows the rules of each system', () => {
  expect(userCacheFolder('linux', { XDG_CACHE_HOME: '/var/cache/me' }, '/home/me')).toBe('/var/cache/me');
  expect(userCacheFolder('linux', {}, '/home/me')).toBe('/home/me/.cache');
  expect(userCacheFolder('linux', { XDG_CACHE_HOME: '' }, '/home/me')).toBe('/home/me/.cache');
  expect(userCacheFolder('linux', { XDG_CACHE_HOME: 'relative' }, '/home/me')).toBe('/home/me/.cache');
  expect(userCacheFolder('darwin', { XDG_CACHE_HOME: '/x' }, '/Users/me')).toBe('/Users/me/Library/Caches');
  expect(userCacheFolder('win32', { LOCALAPPDATA: 'C:\\Local' }, 'C:\\me')).toBe('C:\\Local');
});
