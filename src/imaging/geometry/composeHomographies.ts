import { type Homography, scaledHomography } from './homography.ts';

/** The view that is had by `first`, and then by `then`: the product then · first. */
export function composeHomographies(then: Homography, first: Homography): Homography {
  const [a, b, c, d, e, f, g, h, i] = then;
  const [p, q, r, s, t, u, v, w, x] = first;
  return scaledHomography([
    a * p + b * s + c * v,
    a * q + b * t + c * w,
    a * r + b * u + c * x,
    d * p + e * s + f * v,
    d * q + e * t + f * w,
    d * r + e * u + f * x,
    g * p + h * s + i * v,
    g * q + h * t + i * w,
    g * r + h * u + i * x,
  ]);
}
