import type { Metadata } from 'sharp';
import { plainProfile } from '#imaging/plainProfile.ts';

/** Groups of private data that a picture's header tells of: a profile of somebody's screen, further pages. */
export function headerGroups({ format, icc, pages = 1 }: Metadata): string[] {
  const groups = format === 'tiff' && pages > 1 ? ['embedded preview'] : [];
  return icc && plainProfile(icc) !== icc ? [...groups, 'screen profile'] : groups;
}
