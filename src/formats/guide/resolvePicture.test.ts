import { describe, expect, it } from 'vitest';
import { resolvePicture } from './resolvePicture.ts';

const onDisk = new Set(['docs/images/a b.jpg', 'media/b.png', 'docs/guide/c.jpg', 'IMG_1.JPG', 'docs/x%20y.jpg']);

function resolved(url: string, pictureRoots: string[] = []) {
  const fileExists = (path: string) => (onDisk.has(path) ? path : null);
  return resolvePicture(url, 'docs/guide/steps.md', { fileExists, pictureRoots });
}

describe('resolvePicture', () => {
  it('looks beside the text first, then in each folder above', () => {
    expect(resolved('c.jpg')).toEqual({ path: 'docs/guide/c.jpg', exists: true });
    expect(resolved('../images/a%20b.jpg')).toEqual({ path: 'docs/images/a b.jpg', exists: true });
    expect(resolved('images/a b.jpg')).toEqual({ path: 'docs/images/a b.jpg', exists: true });
    expect(resolved('media/b.png')).toEqual({ path: 'media/b.png', exists: true });
  });

  it('looks in the picture folders it is given', () => {
    expect(resolved('b.png').exists).toBe(false);
    expect(resolved('b.png', ['media'])).toEqual({ path: 'media/b.png', exists: true });
  });

  it('takes an address that begins with a slash from the roots', () => {
    expect(resolved('/media/b.png')).toEqual({ path: 'media/b.png', exists: true });
    expect(resolved('/nothing.png')).toEqual({ path: 'nothing.png', exists: false });
  });

  it('does not take another case for the same file', () => {
    expect(resolved('/IMG_1.jpg')).toEqual({ path: 'IMG_1.jpg', exists: false });
  });

  it('resolves back slashes, queries and names that hold a percent sign', () => {
    expect(resolved('..\\images\\a b.jpg').exists).toBe(true);
    expect(resolved('c.jpg?raw=true').exists).toBe(true);
    expect(resolved('../x%20y.jpg')).toEqual({ path: 'docs/x%20y.jpg', exists: true });
    expect(resolved('50%.jpg')).toEqual({ path: 'docs/guide/50%.jpg', exists: false });
  });

  it('gives no path for addresses on the web', () => {
    for (const url of ['https://a.example/c.jpg', '//a.example/c.jpg', 'data:image/png;base64,AAAA']) {
      expect(resolved(url)).toEqual({ path: null, exists: false });
    }
  });

  it('keeps what climbs out of the folder as a file that is not there', () => {
    expect(resolved('../../../c.jpg')).toEqual({ path: '../../../c.jpg', exists: false });
  });
});
