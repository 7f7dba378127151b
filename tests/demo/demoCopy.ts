import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';

export const demoFolder = path.resolve(import.meta.dirname, '../../demo/tide-lamp');

/** A copy of the demo in a temporary folder, to be changed and thrown away. */
export interface DemoCopy {
  readonly root: string;
  read(file: string): Promise<string>;
  write(file: string, text: string): Promise<void>;
  /** Replaces words that must stand there exactly once. */
  swap(file: string, from: string, to: string): Promise<void>;
  remove(file: string): Promise<void>;
  discard(): Promise<void>;
}

export async function copyDemo(): Promise<DemoCopy> {
  const root = await mkdtemp(path.join(tmpdir(), 'twicebuilt-demo-'));
  await cp(demoFolder, root, {
    recursive: true,
    filter: (source) => !/\/(out|\.twicebuilt)(\/|$)/.test(source.slice(demoFolder.length)),
  });
  const at = (file: string) => path.join(root, file);
  const read = (file: string) => readFile(at(file), 'utf8');
  return {
    root,
    read,
    write: (file, text) => writeFile(at(file), text),
    async swap(file, from, to) {
      const text = await read(file);
      const count = text.split(from).length - 1;
      if (count !== 1) throw new Error(`Expected “${from}” once in ${file}; found it ${count} times.`);
      await writeFile(
        at(file),
        text.replace(from, () => to),
      );
    },
    remove: (file) => rm(at(file)),
    discard: () => rm(root, { recursive: true, force: true }),
  };
}
