// Programs of the system that tests use as independent judges. Installed where that is allowed.
import { spawnSync } from 'node:child_process';

const always = [
  { program: 'exiftool', debian: 'libimage-exiftool-perl' },
  { program: 'chromium', debian: 'chromium' },
  { program: 'java', debian: 'default-jre-headless' },
  { program: 'heif-convert', debian: 'libheif-examples' },
  { program: 'pdftotext', debian: 'poppler-utils' },
];
const onlyLong = [{ program: 'povray', debian: 'povray povray-includes' }];

/** Installs what is missing, as root on Debian; returns what stays missing and why. */
export function ensurePrograms(long) {
  const wanted = long ? [...always, ...onlyLong] : always;
  const missing = wanted.filter(({ program }) => !isThere(program));
  if (missing.length === 0) return [];
  if (process.getuid?.() === 0 && isThere('apt-get')) {
    process.stderr.write(`Installing ${missing.map(({ debian }) => debian).join(', ')} …\n`);
    const options = { stdio: ['ignore', 'ignore', 2], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
    spawnSync('apt-get', ['update', '-q'], options);
    spawnSync(
      'apt-get',
      ['install', '-y', '-q', '--no-install-recommends', ...missing.flatMap(({ debian }) => debian.split(' '))],
      options,
    );
  }
  return missing
    .filter(({ program }) => !isThere(program))
    .map(({ program, debian }) => ({ program, why: `not on this machine; on Debian it comes with ${debian}` }));
}

function isThere(program) {
  return spawnSync('sh', ['-c', `command -v ${program}`], { stdio: 'ignore' }).status === 0;
}
