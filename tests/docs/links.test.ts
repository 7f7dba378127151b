import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { readText } from './readText.ts';

const root = path.resolve(import.meta.dirname, '../..');
const pages = [
  'README.md',
  ...readdirSync(path.join(root, 'docs'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.md'))
    .map((file) => `docs/${file}`),
];

describe('The documentation', () => {
  it.each(pages)('%s leads to files and headings that are there', (page) => {
    const lost = readText(readFileSync(path.join(root, page), 'utf8')).links.filter((link) => {
      if (/^[a-z]+:/i.test(link)) return false;
      const [file = '', anchor] = decodeURIComponent(link).split('#');
      const target = file === '' ? path.join(root, page) : path.resolve(root, path.dirname(page), file);
      if (!existsSync(target)) return true;
      return anchor !== undefined && !readText(readFileSync(target, 'utf8')).anchors.includes(anchor);
    });
    expect(lost).toEqual([]);
  });

  it('is reached as a whole from its index and from the first page', () => {
    const index = readText(readFileSync(path.join(root, 'docs/README.md'), 'utf8')).links;
    const top = readdirSync(path.join(root, 'docs')).filter((file) => file.endsWith('.md') && file !== 'README.md');
    expect(top.filter((file) => !index.includes(file))).toEqual([]);
    expect(readText(readFileSync(path.join(root, 'README.md'), 'utf8')).links).toContain('docs/README.md');
  });
});
