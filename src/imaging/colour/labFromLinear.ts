/** CIELAB colour under illuminant D65: lightness 0 to 100, and green to red, blue to yellow around 0. */
export interface Lab {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

/** Tristimulus values, with Y = 1 for white. */
export type Xyz = readonly [x: number, y: number, z: number];

/** Linear light of the sRGB primaries to tristimulus values (IEC 61966-2-1, 2003, annex F). */
export function xyzFromLinear(red: number, green: number, blue: number): Xyz {
  return [
    0.4124564 * red + 0.3575761 * green + 0.1804375 * blue,
    0.2126729 * red + 0.7151522 * green + 0.072175 * blue,
    0.0193339 * red + 0.119192 * green + 0.9503041 * blue,
  ];
}

/** The white that red, green and blue of 1 make, so that greys come out as exactly neutral. */
const white = xyzFromLinear(1, 1, 1);
/** Below this share of white the cube root gives way to a line (CIE 15:2018, clause 8.2.1.1). */
const knee = (6 / 29) ** 3;

/** Linear light of the sRGB primaries to CIELAB (CIE 15:2018, clause 8.2.1), white at D65. */
export function labFromLinear(red: number, green: number, blue: number): Lab {
  const [x, y, z] = xyzFromLinear(red, green, blue);
  const [fx, fy, fz] = [rooted(x / white[0]), rooted(y / white[1]), rooted(z / white[2])];
  return { l: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

function rooted(share: number): number {
  return share > knee ? Math.cbrt(share) : share / (3 * (6 / 29) ** 2) + 4 / 29;
}
