import { execFile, execFileSync } from 'node:child_process';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** Version of the exiftool of this machine; null where there is none. In CI its absence is a failure. */
export function exiftoolVersion(): string | null {
  try {
    return execFileSync('exiftool', ['-ver'], { encoding: 'utf8' }).trim();
  } catch (cause) {
    if (process.env.CI) {
      throw new Error('exiftool is missing: install the Debian package libimage-exiftool-perl.', { cause });
    }
    return null;
  }
}

/** Writes tags into files in place, in one run. Throws unless exiftool wrote into every one of them. */
export async function writeTags(
  files: readonly { readonly file: string; readonly tags: readonly string[] }[],
): Promise<void> {
  const lines = files.flatMap(({ file, tags }) => ['-overwrite_original', '-m', ...tags, file, '-execute']);
  const running = run('exiftool', ['-@', '-'], { maxBuffer: 1 << 26 });
  running.child.stdin?.end(`${lines.join('\n')}\n`);
  const { stdout } = await running;
  const written = stdout.match(/1 image files updated/g)?.length ?? 0;
  if (written !== files.length) throw new Error(`exiftool wrote into ${written} of ${files.length} files: ${stdout}`);
}

/** All tags of a file as `Group:Name`, unknown ones too, with their values. */
export async function readTags(file: string): Promise<Map<string, string>> {
  const { stdout } = await run('exiftool', ['-a', '-u', '-U', '-G1', '-s', '-s', file], { maxBuffer: 1 << 26 });
  const lines = stdout.split('\n').map((line) => /^\[(.+?)\]\s+(\S+?):\s?(.*)$/.exec(line));
  return new Map(lines.flatMap((match) => (match ? [[`${match[1]}:${match[2]}`, match[3] ?? '']] : [])));
}

/** One binary tag of a file. */
export async function readBinaryTag(file: string, tag: string): Promise<Uint8Array> {
  const { stdout } = await run('exiftool', ['-b', tag, file], { encoding: 'buffer', maxBuffer: 1 << 26 });
  return new Uint8Array(stdout);
}
