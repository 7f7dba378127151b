import sharp from 'sharp';
import { addGlow } from './camera/addGlow.mjs';
import { aimDistance, aimLight } from './camera/aim.mjs';
import { defocus } from './camera/defocus.mjs';
import { enlarge } from './camera/enlarge.mjs';
import { expose } from './camera/expose.mjs';
import { shake } from './camera/shake.mjs';
import { randomStream } from './randomStream.mjs';
import { frameCamera, homography, length, minus } from './sceneCamera.mjs';

/** What a frame does where neither it nor its scene says otherwise. */
const usual = { exposure: 1, blur: 4, glow: 0.04, grain: 0.024, fall: 0.38, quality: 84 };

/** Settings of a frame: those of its scene, unless it has its own. */
export function developing(scene, frame) {
  return { ...usual, ...scene.develop, ...frame.develop };
}

/** How far the frame is focused, in distances of the scene's focus. */
export function focusOf(scene, frame) {
  if (frame.focus === undefined) return 1;
  const { from, focus } = scene.camera;
  return length(minus(frame.focus, from)) / length(minus(focus, from));
}

/**
 * One frame as a small camera would give it, as a JPEG: the scene's trace seen from where the camera is aimed, out of
 * focus by distance, smeared by the hand, glowing, darker in the corners, wrongly exposed or tinted where the frame
 * says so, with grain and a soft shoulder. `side` is the long side in traced pixels, `shown` that of the JPEG; the
 * picture is enlarged before the grain falls on it.
 */
export async function developFrame(light, distance, scene, frame, { side, shown }) {
  const how = developing(scene, frame);
  const camera = frameCamera(scene, frame);
  const [width, height] = [camera.width * side, camera.height * side];
  const matrix = homography(scene, frame, side, light);
  const focus = focusOf(scene, frame);
  const far = aimDistance(distance, matrix, width, height);
  const relative = { ...far, data: far.data.map((v) => v / focus) };
  let picture = defocus(aimLight(light, matrix, width, height), relative, (how.blur * side) / 1000);
  if (frame.shake !== undefined) picture = shake(picture, (frame.shake[0] * side) / 1000, frame.shake[1]);
  picture = enlarge(addGlow(picture, how.glow), { width: camera.width * shown, height: camera.height * shown });
  const bytes = expose(picture, {
    exposure: how.exposure * 2 ** (frame.ev ?? 0),
    gains: frame.gains ?? [1, 1, 1],
    fall: how.fall,
    grain: how.grain,
    random: randomStream(`${frame.name} grain`),
  });
  return sharp(bytes, { raw: { width: picture.width, height: picture.height, channels: 3 } })
    .rotate(frame.portrait ? 270 : 0)
    .sharpen({ sigma: 0.8, m1: 0.35, m2: 0.7 })
    .withIccProfile('srgb')
    .jpeg({ quality: how.quality, chromaSubsampling: '4:2:0', mozjpeg: true })
    .toBuffer();
}
