// Scenes drawn from numbers, so that blur, light, colour and noise of each picture are known exactly.

const size = { width: 1024, height: 768 };
/** Drawn this many times as large and made smaller, so that the edges of a scene are as sharp as pixels allow. */
const finer = 2;

/** Reflectances of benches and boards, red, green and blue in linear light. */
const benches = [
  [0.32, 0.2, 0.11],
  [0.5, 0.5, 0.49],
  [0.8, 0.8, 0.78],
  [0.06, 0.06, 0.065],
  [0.05, 0.2, 0.13],
  [0.22, 0.23, 0.25],
];
const masks = [
  [0.02, 0.13, 0.05],
  [0.02, 0.05, 0.2],
  [0.025, 0.025, 0.025],
  [0.3, 0.02, 0.02],
  [0.75, 0.75, 0.74],
];
const bodies = [
  [0.03, 0.03, 0.03],
  [0.55, 0.05, 0.04],
  [0.6, 0.5, 0.06],
  [0.05, 0.15, 0.5],
  [0.7, 0.7, 0.7],
  [0.3, 0.3, 0.32],
  [0.6, 0.3, 0.1],
  [0.85, 0.83, 0.78],
];
const metal = [0.55, 0.55, 0.53];

export const sceneKinds = ['board', 'parts', 'plain', 'texture'];

/** A scene of a kind: reflectance in linear light, and the box of what it is about, in fractions. */
export function drawScene(kind, seed) {
  const random = randomFrom(seed * 977 + sceneKinds.indexOf(kind) * 131 + 5);
  const sheet = newSheet(random.pick(benches));
  grain(sheet, random, kind === 'texture' ? 0.5 : random.between(0.01, 0.12), kind === 'texture' ? 3 : 24);
  const draw = { board: drawBoard, parts: drawParts, plain: drawPlain, texture: drawTexture }[kind];
  const box = draw(sheet, random);
  return { ...shrink(sheet), box, kind, seed };
}

/**
 * The scene as a lens and a hand blur it: by a disc (`disc`, its diameter in pixels), by a bell (`bell`, its standard
 * deviation) or by moving (`motion`: pixels and degrees).
 */
export function blurred(scene, { disc = 0, bell = 0, motion }) {
  const { width, height } = scene;
  let { light } = scene;
  if (disc > 0) light = blurByDisc(light, width, height, disc / 2);
  if (bell > 0) light = blurByBell(light, width, height, bell);
  if (motion) light = blurByMotion(light, width, height, motion);
  return { ...scene, light };
}

/**
 * A picture of a scene: light that falls off (`fallOff`: stops across the picture and degrees towards the dark), exposure
 * in stops, gains of the channels, noise in code values.
 */
export function photograph({ width, height, light }, { fallOff, ev = 0, gains = [1, 1, 1], noise = 0, seed = 1 } = {}) {
  const random = randomFrom(seed * 31 + 7);
  const rgb = new Uint8Array(3 * width * height);
  const [cosine, sine] = fallOff ? towards(fallOff.direction) : [0, 0];
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const along = ((x / width - 0.5) * cosine + (y / height - 0.5) * sine) / (Math.abs(cosine) + Math.abs(sine) || 1);
      const strength = 2 ** (ev - (fallOff?.stops ?? 0) * along);
      for (let channel = 0; channel < 3; channel++, at++) {
        const linear = Math.min(1, Math.max(0, light[at] * gains[channel] * strength));
        const coded = codes[Math.round(linear * (codes.length - 1))];
        rgb[at] = Math.round(Math.min(255, Math.max(0, coded + (noise > 0 ? noise * random.normal() : 0))));
      }
    }
  }
  return { width, height, rgb };
}

function towards(degrees) {
  return [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
}

/** Code of linear light (IEC 61966-2-1), before rounding. */
const codes = Float32Array.from({ length: 65536 }, (_, at) => {
  const linear = at / 65535;
  return 255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055);
});

function newSheet(colour) {
  const [width, height] = [size.width * finer, size.height * finer];
  const light = new Float32Array(3 * width * height);
  for (let at = 0; at < light.length; at++) light[at] = colour[at % 3];
  return { width, height, light };
}

/** Multiplies by uneven brightness: random values on a grid, straight between them. */
function grain({ width, height, light }, random, strength, cell) {
  const across = Math.ceil(width / cell) + 2;
  const values = Float32Array.from({ length: across * (Math.ceil(height / cell) + 2) }, () => random.between(-1, 1));
  for (let y = 0; y < height; y++) {
    const [row, fy] = [Math.floor(y / cell), (y % cell) / cell];
    for (let x = 0; x < width; x++) {
      const [column, fx] = [Math.floor(x / cell), (x % cell) / cell];
      const at = row * across + column;
      const upper = values[at] * (1 - fx) + values[at + 1] * fx;
      const lower = values[at + across] * (1 - fx) + values[at + across + 1] * fx;
      const factor = 1 + strength * (upper * (1 - fy) + lower * fy);
      for (let channel = 0; channel < 3; channel++) light[3 * (y * width + x) + channel] *= factor;
    }
  }
}

function drawBoard(sheet, random) {
  const turn = random.between(-0.35, 0.35);
  const middle = [random.between(0.42, 0.58) * size.width, random.between(0.42, 0.58) * size.height];
  const [wide, high] = [random.between(380, 560), random.between(260, 400)];
  const mask = random.pick(masks);
  const place = (x, y) => [
    middle[0] + x * Math.cos(turn) - y * Math.sin(turn),
    middle[1] + x * Math.sin(turn) + y * Math.cos(turn),
  ];
  const block = (x, y, w, h, colour, more = {}) => fill(sheet, place(x, y), w, h, turn, colour, more);
  block(0, 0, wide, high, mask);
  const inside = () => [random.between(-0.46, 0.46) * wide, random.between(-0.46, 0.46) * high];
  const track = mask.map((value) => value * 1.7 + 0.02);
  for (let n = 0; n < 40; n++) {
    const [x, y] = inside();
    const length = random.between(30, 160);
    const upright = random.chance(0.5);
    if (Math.abs(x) + length / 2 > wide / 2 || Math.abs(y) + length / 2 > high / 2) continue;
    block(x, y, upright ? 3 : length, upright ? length : 3, track);
  }
  for (let x = -wide / 2 + 16; x < wide / 2 - 10; x += 14) {
    for (const y of [-high / 2 + 14, high / 2 - 14]) {
      block(x, y, 9, 9, metal, { round: true });
      block(x, y, 4, 4, [0.02, 0.02, 0.02], { round: true });
    }
  }
  for (let n = 0; n < 5; n++) {
    const [x, y] = [random.between(-0.3, 0.3) * wide, random.between(-0.28, 0.28) * high];
    const [w, h] = [random.between(30, 110), random.between(20, 50)];
    for (let pin = -w / 2 + 5; pin < w / 2; pin += 10) block(x + pin, y, 4, h + 14, metal);
    block(x, y, w, h, random.pick(bodies));
    block(x, y + h / 2 + 12, w * 0.7, 2, [0.8, 0.8, 0.8]);
  }
  const reach = [
    (Math.abs(Math.cos(turn)) * wide + Math.abs(Math.sin(turn)) * high) / 2,
    (Math.abs(Math.sin(turn)) * wide + Math.abs(Math.cos(turn)) * high) / 2,
  ];
  return boxOf(middle[0] - reach[0], middle[1] - reach[1], 2 * reach[0], 2 * reach[1]);
}

function drawParts(sheet, random) {
  for (let n = 0; n < 26; n++) {
    const at = [random.between(60, size.width - 60), random.between(60, size.height - 60)];
    const [w, h] = [random.between(24, 120), random.between(14, 60)];
    fill(sheet, at, w + 60, 4, 0, metal);
    fill(sheet, at, w, h, random.between(-1.5, 1.5), random.pick(bodies), { round: random.chance(0.3) });
  }
  return boxOf(60, 60, size.width - 120, size.height - 120);
}

/** One or two plain housings with soft shading: few edges, and those sharp. */
function drawPlain(sheet, random) {
  const [w, h] = [random.between(380, 520), random.between(280, 400)];
  const middle = [size.width * random.between(0.45, 0.55), size.height * random.between(0.45, 0.55)];
  const colour = random.pick(bodies.slice(3));
  fill(sheet, middle, w, h, random.between(-0.2, 0.2), colour, { shade: 0.5 });
  fill(
    sheet,
    [middle[0] + w / 5, middle[1]],
    60,
    60,
    0,
    colour.map((value) => value * 0.6),
    { round: true },
  );
  return boxOf(middle[0] - w / 2 - 20, middle[1] - h / 2 - 20, w + 40, h + 40);
}

function drawTexture(sheet, random) {
  for (let n = 0; n < 8; n++) {
    const at = [random.between(200, size.width - 200), random.between(160, size.height - 160)];
    fill(sheet, at, random.between(60, 200), random.between(60, 160), random.between(-1, 1), random.pick(bodies));
  }
  return boxOf(100, 80, size.width - 200, size.height - 160);
}

function boxOf(left, top, width, height) {
  return { x: left / size.width, y: top / size.height, width: width / size.width, height: height / size.height };
}

/** Fills a turned rectangle or ellipse, given by its middle and its sides in pixels of the picture. */
function fill({ width, height, light }, [x, y], w, h, turn, colour, { round = false, shade = 0 } = {}) {
  const [halfWide, halfHigh] = [(w * finer) / 2, (h * finer) / 2];
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
  const reach = Math.hypot(halfWide, halfHigh);
  const [cx, cy] = [x * finer, y * finer];
  const [top, bottom] = [Math.max(0, Math.floor(cy - reach)), Math.min(height - 1, Math.ceil(cy + reach))];
  const [left, right] = [Math.max(0, Math.floor(cx - reach)), Math.min(width - 1, Math.ceil(cx + reach))];
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const u = ((column - cx) * cosine + (row - cy) * sine) / halfWide;
      const v = ((row - cy) * cosine - (column - cx) * sine) / halfHigh;
      if (round ? u * u + v * v > 1 : Math.abs(u) > 1 || Math.abs(v) > 1) continue;
      const factor = 1 + shade * (v * 0.6 + u * 0.4);
      const at = 3 * (row * width + column);
      for (let channel = 0; channel < 3; channel++) light[at + channel] = colour[channel] * factor;
    }
  }
}

function shrink({ width, height, light }) {
  const [wide, high] = [width / finer, height / finer];
  const small = new Float32Array(3 * wide * high);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const to = 3 * (Math.floor(row / finer) * wide + Math.floor(column / finer));
      for (let channel = 0; channel < 3; channel++) {
        small[to + channel] += light[3 * (row * width + column) + channel] / (finer * finer);
      }
    }
  }
  return { width: wide, height: high, light: small };
}

/** A disc whose rim counts in part, as sums along rows. */
function blurByDisc(light, width, height, radius) {
  const rows = [];
  let total = 0;
  for (let dy = -Math.ceil(radius); dy <= Math.ceil(radius); dy++) {
    // The rows of a pixel are sampled, so that small discs keep their size.
    const parts = radius < 2 ? 4 : 1;
    for (let part = 0; part < parts; part++) {
      const y = dy + (part + 0.5) / parts - 0.5;
      if (Math.abs(y) >= radius) continue;
      const half = Math.sqrt(radius * radius - y * y);
      rows.push({ dy, half });
      total += 2 * half;
    }
  }
  const result = new Float32Array(light.length);
  const sums = new Float64Array(width + 1);
  for (let channel = 0; channel < 3; channel++) {
    for (let row = 0; row < height; row++) {
      for (let x = 0; x < width; x++) sums[x + 1] = sums[x] + light[3 * (row * width + x) + channel];
      for (const { dy, half } of rows) {
        const to = row - dy;
        if (to < 0 || to >= height) continue;
        for (let x = 0; x < width; x++) {
          const sum = sumTo(sums, x + 0.5 + half, width) - sumTo(sums, x + 0.5 - half, width);
          result[3 * (to * width + x) + channel] += sum;
        }
      }
    }
  }
  return evenedAtEdges(result, width, height, rows, total);
}

function sumTo(sums, at, width) {
  const within = Math.min(width, Math.max(0, at));
  const low = Math.floor(within);
  return sums[low] + ((sums[low + 1] ?? sums[low]) - sums[low]) * (within - low);
}

function evenedAtEdges(result, width, height, rows, total) {
  const inside = new Float64Array(width + 1).map((_, x) => x);
  for (let row = 0; row < height; row++) {
    const seen = rows.filter(({ dy }) => row + dy >= 0 && row + dy < height);
    const middle = seen.reduce((sum, { half }) => sum + 2 * half, 0);
    for (let x = 0; x < width; x++) {
      const edge = x < 40 || x > width - 40;
      const weight = edge
        ? seen.reduce(
            (sum, { half }) => sum + sumTo(inside, x + 0.5 + half, width) - sumTo(inside, x + 0.5 - half, width),
            0,
          )
        : middle;
      for (let channel = 0; channel < 3; channel++) result[3 * (row * width + x) + channel] /= weight || total;
    }
  }
  return result;
}

function blurByBell(light, width, height, sigma) {
  const reach = Math.ceil(3.5 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, n) => Math.exp(-((n - reach) ** 2) / (2 * sigma * sigma)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const along = (from, step, count, strideOf) => {
    const to = new Float32Array(from.length);
    for (let line = 0; line < from.length / 3 / count; line++) {
      for (let channel = 0; channel < 3; channel++) {
        const start = strideOf(line) * 3 + channel;
        for (let at = 0; at < count; at++) {
          let sum = 0;
          for (let n = -reach; n <= reach; n++) {
            const other = Math.min(count - 1, Math.max(0, at + n));
            sum += weights[n + reach] * from[start + 3 * other * step];
          }
          to[start + 3 * at * step] = sum / total;
        }
      }
    }
    return to;
  };
  const rows = along(light, 1, width, (line) => line * width);
  return along(rows, width, height, (line) => line);
}

function blurByMotion(light, width, height, { length, direction }) {
  const [cosine, sine] = towards(direction);
  const steps = Math.max(3, Math.ceil(2 * length));
  const result = new Float32Array(light.length);
  for (let n = 0; n < steps; n++) {
    const along = ((n + 0.5) / steps - 0.5) * length;
    const [dx, dy] = [along * cosine, along * sine];
    const [ix, iy] = [Math.floor(dx), Math.floor(dy)];
    const [fx, fy] = [dx - ix, dy - iy];
    for (let row = 0; row < height; row++) {
      const upper = Math.min(height - 1, Math.max(0, row + iy)) * width;
      const lower = Math.min(height - 1, Math.max(0, row + iy + 1)) * width;
      for (let x = 0; x < width; x++) {
        const left = Math.min(width - 1, Math.max(0, x + ix));
        const right = Math.min(width - 1, Math.max(0, x + ix + 1));
        for (let channel = 0; channel < 3; channel++) {
          const top = light[3 * (upper + left) + channel] * (1 - fx) + light[3 * (upper + right) + channel] * fx;
          const low = light[3 * (lower + left) + channel] * (1 - fx) + light[3 * (lower + right) + channel] * fx;
          result[3 * (row * width + x) + channel] += (top * (1 - fy) + low * fy) / steps;
        }
      }
    }
  }
  return result;
}

/** A stream of random numbers that is the same each time. */
function randomFrom(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    between: (low, high) => low + (high - low) * next(),
    chance: (share) => next() < share,
    pick: (list) => list[Math.floor(next() * list.length)],
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
