import type { Lab } from './labFromLinear.ts';

const turn = 2 * Math.PI;
const degree = Math.PI / 180;
const farChroma = 25 ** 7;

/**
 * Difference of two colours as seen, CIEDE2000 with weights of 1 (ISO/CIE 11664-6; G. Sharma, W. Wu and E. N. Dalal,
 * Color Research and Application 30(1), 2005). About 1 can just be seen. Truth: tests/truth/measures.
 */
export function deltaE2000(one: Lab, other: Lab): number {
  const meanChroma = (Math.hypot(one.a, one.b) + Math.hypot(other.a, other.b)) / 2;
  const stretch = 1 + 0.5 * (1 - Math.sqrt(meanChroma ** 7 / (meanChroma ** 7 + farChroma)));
  const [c1, h1] = polar(one.a * stretch, one.b);
  const [c2, h2] = polar(other.a * stretch, other.b);
  const grey = c1 * c2 === 0;
  const hueStep = grey ? 0 : shortWay(h2 - h1);
  const lightness = other.l - one.l;
  const chroma = c2 - c1;
  const hue = 2 * Math.sqrt(c1 * c2) * Math.sin(hueStep / 2);
  const meanL = (one.l + other.l) / 2;
  const meanC = (c1 + c2) / 2;
  const meanH = grey ? h1 + h2 : meanHue(h1, h2);
  const t =
    1 -
    0.17 * Math.cos(meanH - 30 * degree) +
    0.24 * Math.cos(2 * meanH) +
    0.32 * Math.cos(3 * meanH + 6 * degree) -
    0.2 * Math.cos(4 * meanH - 63 * degree);
  const sl = 1 + (0.015 * (meanL - 50) ** 2) / Math.sqrt(20 + (meanL - 50) ** 2);
  const sc = 1 + 0.045 * meanC;
  const sh = 1 + 0.015 * meanC * t;
  const bend = 30 * degree * Math.exp(-(((meanH / degree - 275) / 25) ** 2));
  const turned = -Math.sin(2 * bend) * 2 * Math.sqrt(meanC ** 7 / (meanC ** 7 + farChroma));
  return Math.sqrt((lightness / sl) ** 2 + (chroma / sc) ** 2 + (hue / sh) ** 2 + turned * (chroma / sc) * (hue / sh));
}

/** Chroma, and hue from 0 to a full turn. */
function polar(a: number, b: number): [number, number] {
  return [Math.hypot(a, b), a === 0 && b === 0 ? 0 : (Math.atan2(b, a) + turn) % turn];
}

function shortWay(step: number): number {
  if (step > Math.PI) return step - turn;
  return step < -Math.PI ? step + turn : step;
}

/** Between two hues on the shorter arc; hues just half a turn apart take the plain mean, as published. */
function meanHue(h1: number, h2: number): number {
  if (Math.abs(h1 - h2) <= Math.PI) return (h1 + h2) / 2;
  return h1 + h2 < turn ? (h1 + h2 + turn) / 2 : (h1 + h2 - turn) / 2;
}
