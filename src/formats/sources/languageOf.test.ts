import { describe, expect, it } from 'vitest';
import { languageOf } from './languageOf.ts';

describe('languageOf', () => {
  it.each(['lamp.ino', 'old.pde', 'a.c', 'a.cc', 'a.cpp', 'a.cxx', 'a.h', 'a.hpp', 'SRC/MAIN.CPP'])(
    '%s is C++',
    (path) => {
      expect(languageOf(path, '')).toBe('cpp');
    },
  );
  it.each(['main.py', 'lib/code.PY'])('%s is Python', (path) => {
    expect(languageOf(path, '')).toBe('python');
  });
  it.each(['readme.md', 'parts.csv', 'a.json', 'photo.jpg', 'py', 'notes', 'a.pyc', 'a.ino.bak'])(
    '%s is neither',
    (path) => {
      expect(languageOf(path, '')).toBeNull();
    },
  );
  it('goes by the first line where the name has no ending', () => {
    expect(languageOf('tools/flash', '#!/usr/bin/env python3\nprint(1)\n')).toBe('python');
    expect(languageOf('tools/flash', '#!/usr/bin/env micropython\n')).toBe('python');
    expect(languageOf('tools/flash', '#!/bin/sh\n')).toBeNull();
    expect(languageOf('tools/flash.txt', '#!/usr/bin/env python3\n')).toBeNull();
  });
  it('takes no file with NUL characters for a source, whatever its name', () => {
    expect(languageOf('main.py', 'M\0\0')).toBeNull();
  });
});
