/** Pixels along the long side of a frame as it is traced; a small camera is no sharper than this. */
export const tracedSide = 1392;

/**
 * Where the camera of a scene stands and looks: a pinhole. `focal` is its length in widths of the picture; `right`,
 * `up` and `forward` are unit vectors. Coordinates are left-handed as in the scene: x right, y up, z away.
 */
export function sceneCamera({ from, at, angle, roll = 0 }) {
  const forward = unit(minus(at, from));
  const right = unit(cross([roll, 1, 0], forward));
  return { from, forward, right, up: cross(forward, right), focal: 0.5 / Math.tan(radians(angle) / 2) };
}

/**
 * The camera of one frame, held where the scene's camera stands but aimed anew: `pan` to the right, `tilt` upwards and
 * `roll` clockwise, in degrees, in this order, and `zoom` as a factor on the focal length. `portrait` is upright.
 */
export function frameCamera(scene, { pan = 0, tilt = 0, roll = 0, zoom = 1, portrait = false } = {}) {
  const camera = sceneCamera(scene.camera);
  const [f1, r1] = turned(camera.forward, camera.right, pan);
  const [f2, u2] = turned(f1, camera.up, tilt);
  const [r3, u3] = turned(r1, u2, -roll);
  const [width, height] = portrait ? [0.75, 1] : [1, 0.75];
  return { from: camera.from, forward: f2, right: r3, up: u3, focal: camera.focal * zoom, width, height };
}

/** Share of the picture's width and height at which a point is seen, from the top left; null behind the camera. */
export function project(camera, point) {
  const ray = minus(point, camera.from);
  const depth = dot(ray, camera.forward);
  if (depth <= 0) return null;
  return [
    0.5 + (camera.focal * dot(ray, camera.right)) / depth / camera.width,
    0.5 - (camera.focal * dot(ray, camera.up)) / depth / camera.height,
  ];
}

/** Size in pixels of a scene's trace: its view, and as much around it as its frames look past that. */
export function tracedSize(scene, side) {
  const margin = Math.max(...scene.frames.map((frame) => overshoot(scene, frame)));
  const steps = Math.ceil((margin * side) / 4);
  return { width: side + 8 * steps, height: side * 0.75 + 6 * steps };
}

/** How far a frame looks past its scene's view, on the worst side, as a share of that view's width. */
function overshoot(scene, frame) {
  const view = { width: 1, height: 0.75 };
  const matrix = homography(scene, frame, 1, view);
  const { width, height } = frameCamera(scene, frame);
  const corners = [0, width].flatMap((x) => [0, height].map((y) => through(matrix, x, y)));
  return Math.max(0, ...corners.flatMap(([x, y]) => [-x, x - 1, -y / 0.75, y / 0.75 - 1]).map((v) => v - 1e-9));
}

/** Where a homography takes a point. */
export function through(m, x, y) {
  const w = m[6] * x + m[7] * y + m[8];
  return [(m[0] * x + m[1] * y + m[2]) / w, (m[3] * x + m[4] * y + m[5]) / w];
}

/**
 * The homography from pixels of a frame of `side` pixels to pixels of the scene's trace, as nine numbers row by row.
 * Both cameras stand at the same place, so it holds for near and far alike.
 */
export function homography(scene, frame, side, traced) {
  const to = sceneCamera(scene.camera);
  const camera = frameCamera(scene, frame);
  const focal = camera.focal * side;
  const [halfWidth, halfHeight] = [(camera.width * side) / 2, (camera.height * side) / 2];
  const rows = [to.right, to.up, to.forward].map((axis) => {
    const [a, b, c] = [dot(camera.right, axis), -dot(camera.up, axis), dot(camera.forward, axis)];
    return [a, b, c * focal - a * halfWidth - b * halfHeight];
  });
  const scale = to.focal * side;
  return [0, 1, 2].flatMap((row) =>
    [0, 1, 2].map((k) => {
      if (row === 0) return scale * rows[0][k] + (traced.width / 2) * rows[2][k];
      if (row === 1) return -scale * rows[1][k] + (traced.height / 2) * rows[2][k];
      return rows[2][k];
    }),
  );
}

export function minus(a, b) {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function length(v) {
  return Math.hypot(...v);
}

export function radians(degrees) {
  return (degrees * Math.PI) / 180;
}

/** Two unit vectors at right angles, turned in their plane so that the first moves towards the second. */
function turned(first, second, degrees) {
  const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
  return [0, 1].map((n) => first.map((v, k) => (n === 0 ? v * c + second[k] * s : second[k] * c - v * s)));
}

function unit(v) {
  return v.map((n) => n / length(v));
}

function dot(a, b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a, b) {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
