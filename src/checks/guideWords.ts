import type { Build } from '#core/build.ts';
import { filesPlaying } from './filesPlaying.ts';
import { maskUnread } from './maskUnread.ts';

/** What the guide and its lists of parts and tools say, without code and comments. */
export function guideWords(build: Build): string {
  return [...filesPlaying(build, 'guide', 'tools')]
    .flatMap((file) => build.texts.get(file) ?? [])
    .map((source) => maskUnread(source))
    .join('\n');
}
