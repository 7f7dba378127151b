import { headBytes, kindOfBytes } from '#imaging/kindOfBytes.ts';
import { cleanPicture } from './cleanPicture.ts';
import { comparePictures } from './comparePictures.ts';
import { flattenPicture } from './flattenPicture.ts';
import { inspectPicture } from './inspectPicture.ts';
import { measureShot } from './measureShot.ts';
import type { AnswerTo, PictureJob } from './pictureJob.ts';

/** Does one job. A file that cannot be used gives a reason; only a mistake of ours throws. */
export async function runPictureJob<Job extends PictureJob>(job: Job): Promise<AnswerTo<Job>>;
export async function runPictureJob(job: PictureJob): Promise<AnswerTo<PictureJob>> {
  const kind = kindOf(job.bytes);
  if (kind === null) return { ok: false, reason: unreadable(job.bytes) };
  switch (job.do) {
    case 'inspect':
      return inspectPicture(kind, job);
    case 'clean':
      return cleanPicture(kind, job);
    case 'measure':
      return measureShot(kind, job.bytes);
    case 'compare': {
      const secondKind = kindOf(job.second);
      if (secondKind === null) return { ok: false, reason: unreadable(job.second) };
      return comparePictures([kind, job.bytes], [secondKind, job.second]);
    }
    case 'flatten':
      return flattenPicture(kind, job.bytes, job.wish);
  }
}

function kindOf(bytes: Uint8Array) {
  return kindOfBytes(bytes.subarray(0, headBytes));
}

function unreadable(bytes: Uint8Array): string {
  const what = bytes.length === 0 ? 'The file is empty.' : 'The file is no picture or clip that can be read.';
  return `${what} Replace it, or leave it out.`;
}
