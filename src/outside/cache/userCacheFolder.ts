import { homedir } from 'node:os';
import path from 'node:path';

/**
 * Where programs keep what can be made again: `XDG_CACHE_HOME` or `~/.cache` (XDG Base Directory Specification),
 * `~/Library/Caches` on macOS, `%LOCALAPPDATA%` on Windows.
 */
export function userCacheFolder(
  platform: NodeJS.Platform = process.platform,
  env: NodeJS.ProcessEnv = process.env,
  home: string = homedir(),
): string {
  if (platform === 'win32') return env.LOCALAPPDATA || path.join(home, 'AppData', 'Local');
  if (platform === 'darwin') return path.join(home, 'Library', 'Caches');
  // The specification has relative paths ignored.
  const given = env.XDG_CACHE_HOME;
  return given && path.isAbsolute(given) ? given : path.join(home, '.cache');
}
