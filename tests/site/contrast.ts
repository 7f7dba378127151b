/**
 * Contrast of two colours written as `#rrggbb`, from 1 to 21, after WCAG 2.2: (L1 + 0.05) / (L2 + 0.05) with the
 * relative luminance of decoded sRGB.
 */
export function contrastOf(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminanceOf(one), luminanceOf(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

function luminanceOf(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
    linear(Number.parseInt(colour.slice(at, at + 2), 16) / 255),
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function linear(coded: number): number {
  return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
}
