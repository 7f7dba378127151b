import { createRequire } from 'node:module';
import type OpenCv from '@techstark/opencv-js';
import type { Plane } from '#imaging/pixels/picture.ts';

// Required, not imported: the module has a method `then` that never ends a wait for it.
const cv = createRequire(import.meta.url)('@techstark/opencv-js') as typeof OpenCv;

/** OpenCV, in a record since it cannot be waited for itself. */
export async function openCv(): Promise<{ cv: typeof OpenCv }> {
  if (cv.Mat === undefined) {
    await new Promise<void>((ready) => {
      cv.onRuntimeInitialized = () => ready();
    });
  }
  return { cv };
}

/** A plane as 64-bit numbers for OpenCV. */
export function matOf({ width, height, values }: Plane) {
  return cv.matFromArray(height, width, cv.CV_64F, Array.from(values));
}
