import type { Box } from '#core/place.ts';
import { lumaOf, type Picture } from '../pixels/picture.ts';
import { edgeWidths } from './edgeWidths.ts';
import { lightOf } from './lightOf.ts';
import { type Cast, measureCast } from './measureCast.ts';
import { type Clutter, measureClutter } from './measureClutter.ts';
import { measureEvenness } from './measureEvenness.ts';
import { type Exposure, measureExposure } from './measureExposure.ts';
import { type Focus, measureFocus } from './measureFocus.ts';
import { measureGlare } from './measureGlare.ts';
import { measureNoise } from './measureNoise.ts';
import { measureTilt } from './measureTilt.ts';
import { type Corners, pixelsPerMillimetre } from './pixelsPerMillimetre.ts';
import { pyramidOf } from './pyramidOf.ts';
import { scharr } from './scharr.ts';

export interface MeasureOptions {
  /** What the picture is about: focus is judged in it and clutter round it. Without it, the whole picture and its middle. */
  readonly subject?: Box;
  /** Something grey or white, for the colour of the light. */
  readonly grey?: Box;
  /** Where the board lies and how large it is, in millimetres. */
  readonly board?: { readonly corners: Corners; readonly width: number; readonly height: number };
}

export interface Measures {
  readonly focus: Focus;
  readonly exposure: Exposure;
  readonly cast: Cast | null;
  readonly clutter: Clutter;
  /** Share of the picture in reflections, 0 to 1. */
  readonly glare: number;
  /** Standard deviation of luma in code values of 0 to 255; null where nothing is flat. */
  readonly noise: number | null;
  /** Degrees clockwise that the lines of the picture lean; null where no direction stands out. */
  readonly tilt: number | null;
  /** Pixels of this picture to a millimetre of the board; null without a board. */
  readonly pixelsPerMillimetre: number | null;
}

/** All measures of one picture. Lengths count in its own pixels: give it some 1024 pixels long. */
export function measurePicture(picture: Picture, { subject, grey, board }: MeasureOptions = {}): Measures {
  const pyramid = pyramidOf(lumaOf(picture));
  const light = lightOf(picture);
  const noise = measureNoise(pyramid);
  return {
    focus: measureFocus(edgeWidths(pyramid, noise, subject ?? null)),
    exposure: measureExposure(picture, light, measureEvenness(pyramid)),
    cast: measureCast(light, grey ?? null),
    clutter: measureClutter(scharr(pyramid[2]), subject ?? null),
    glare: measureGlare(pyramid[1]),
    noise: noise.sigma,
    tilt: measureTilt(scharr(pyramid[1])),
    pixelsPerMillimetre: board ? pixelsPerMillimetre(board.corners, picture, board) : null,
  };
}
