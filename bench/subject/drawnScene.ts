import { seededRandom } from '#imaging/geometry/seededRandom.ts';
import { type Picture, pictureFrom } from '#imaging/pixels/picture.ts';

/** A scene of a bench drawn by numbers, and what is known of it; places are shares of the picture's width and height. */
export interface DrawnScene {
  readonly kind: 'board' | 'cut off' | 'close by' | 'other thing';
  readonly picture: Picture;
  /** Left, top, width, height. */
  readonly subject: readonly [number, number, number, number];
  /** Clockwise from the top left; null where no whole board is in view. */
  readonly corners: readonly (readonly [number, number])[] | null;
}

type Colour = readonly [number, number, number];
type Point = readonly [x: number, y: number];

const grounds: readonly Colour[] = [
  [214, 209, 198],
  [150, 152, 155],
  [166, 122, 82],
  [26, 96, 82],
  [38, 38, 42],
  [196, 168, 128],
  [232, 232, 230],
  [60, 72, 98],
];
const masks: readonly Colour[] = [
  [22, 100, 58],
  [24, 52, 128],
  [150, 26, 30],
  [28, 28, 30],
  [230, 230, 226],
  [82, 36, 104],
  [168, 128, 70],
  [36, 140, 70],
];

/** The same seed draws the same scene. */
export function drawnScene(seed: number, width = 640, height = 480): DrawnScene {
  const random = seededRandom(seed * 7919 + 1);
  const between = (low: number, high: number) => low + (high - low) * random();
  const oneOf = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const canvas = new Canvas(width * 2, height * 2);
  const size: Point = [canvas.width, canvas.height];
  const ground = oneOf(grounds);
  const mask = oneOf(masks.filter((each) => apart(each, ground) > 60));
  layGround(canvas, ground, oneOf(['plain', 'grain', 'grid', 'clouds', 'sheet']), random);
  const luck = random();
  const kind = luck < 0.6 ? 'board' : luck < 0.7 ? 'cut off' : luck < 0.8 ? 'close by' : 'other thing';
  const things = Math.floor(between(0, 5));
  const clutter = () => {
    for (let n = 0; n < things; n++) layClutter(canvas, random);
  };
  let points: readonly Point[] = [];
  let corners: readonly Point[] | null = null;
  if (kind === 'other thing') {
    clutter();
    points = layThing(canvas, random);
  } else {
    const view = viewOfBoard(size, kind, random);
    const outline = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ].map(([u, v]) => view(u as number, v as number));
    clutter();
    castShadow(canvas, outline, between(4, 40), between(4, 40), between(0.25, 0.6));
    canvas.polygon(outline, () => mask);
    points = layParts(canvas, view, mask, kind, random);
    if (kind !== 'close by') points = outline;
    if (kind === 'board') corners = clockwiseFromTopLeft(outline);
  }
  const shares = (list: readonly Point[]) => list.map(([x, y]) => [x / size[0], y / size[1]] as const);
  return {
    kind,
    picture: canvas.develop({
      blur: Math.round(between(0, 2)),
      noise: between(0, 6),
      fall: between(0, 0.5),
      towards: between(0, 2 * Math.PI),
      gains: [between(0.9, 1.1), 1, between(0.85, 1.1)],
      random,
    }),
    subject: boxOf(shares(points)),
    corners: corners && shares(corners),
  };
}

/** A pinhole above the bench, tilted: takes shares of the board to the canvas. */
function viewOfBoard([width, height]: Point, kind: DrawnScene['kind'], random: () => number) {
  const between = (low: number, high: number) => low + (high - low) * random();
  for (let attempt = 0; ; attempt++) {
    const aspect = between(1, 2.4);
    const reach =
      kind === 'close by' ? between(2.2, 3.5) : kind === 'cut off' ? between(0.7, 1.3) : between(0.25, 0.85);
    const long = reach * width;
    const [turn, tilt] = [between(-0.7, 0.7) + (random() < 0.2 ? Math.PI / 2 : 0), between(0, 0.9)];
    const shift = kind === 'board' ? 0.14 : kind === 'cut off' ? 0.4 : 0.1;
    const [moveX, moveY] = [between(-shift, shift) * width, between(-shift, shift) * height];
    const distance = 1.3 * width;
    const view = (u: number, v: number): Point => {
      const [x, y] = [(u - 0.5) * long, ((v - 0.5) * long) / aspect];
      const [across, along] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
      const depth = distance - along * Math.sin(tilt);
      const zoom = distance / depth;
      return [width / 2 + moveX + across * zoom, height / 2 + moveY + along * Math.cos(tilt) * zoom];
    };
    const seen = [view(0, 0), view(1, 0), view(1, 1), view(0, 1)];
    const inside = seen.filter(([x, y]) => x > 12 && y > 12 && x < width - 12 && y < height - 12).length;
    const fits = kind === 'board' ? inside === 4 : kind === 'cut off' ? inside === 2 || inside === 3 : inside === 0;
    if (fits || attempt > 200) return view;
  }
}

/** Holes or tracks, and parts; returns the outline of the one that a close view is about. */
function layParts(
  canvas: Canvas,
  view: (u: number, v: number) => Point,
  mask: Colour,
  kind: DrawnScene['kind'],
  random: () => number,
): readonly Point[] {
  const between = (low: number, high: number) => low + (high - low) * random();
  const patch = (u: number, v: number, w: number, h: number): Point[] => [
    view(u, v),
    view(u + w, v),
    view(u + w, v + h),
    view(u, v + h),
  ];
  const metal: Colour = [196, 180, 140];
  if (random() < 0.5) {
    const [columns, rows] = [Math.round(between(12, 28)), Math.round(between(8, 18))];
    for (let n = 1; n < columns; n++) {
      for (let m = 1; m < rows; m++) {
        canvas.polygon(patch(n / columns - 0.008, m / rows - 0.012, 0.016, 0.024), () => metal);
      }
    }
  } else {
    const track: Colour = [mask[0] * 0.8 + 30, mask[1] * 0.8 + 30, mask[2] * 0.8 + 30];
    for (let n = 0; n < 30; n++) {
      const flat = random() < 0.5;
      const [u, v] = [between(0.03, 0.7), between(0.03, 0.7)];
      canvas.polygon(patch(u, v, flat ? between(0.05, 0.25) : 0.006, flat ? 0.009 : between(0.05, 0.25)), () => track);
    }
    for (const [u, v] of [
      [0.04, 0.05],
      [0.93, 0.05],
      [0.93, 0.9],
      [0.04, 0.9],
    ]) {
      canvas.polygon(patch(u as number, v as number, 0.03, 0.05), () => metal);
    }
  }
  const bodies: Colour[] = [
    [30, 30, 32],
    [40, 38, 40],
    [200, 200, 196],
    [190, 150, 60],
    [230, 226, 216],
  ];
  const count = kind === 'close by' ? 6 : Math.floor(between(0, 12));
  for (let n = 0; n < count; n++) {
    const [u, v] = [between(0.05, 0.75), between(0.05, 0.75)];
    const body = bodies[Math.floor(random() * bodies.length)] ?? metal;
    const outline = patch(u, v, between(0.03, 0.2), between(0.04, 0.2));
    castShadow(canvas, outline, 6, 5, 0.4);
    canvas.polygon(outline, () => body);
  }
  if (kind !== 'close by') return [];
  const [w, h] = [between(0.1, 0.2), between(0.1, 0.2)];
  const outline = patch(0.5 - w / 2 + between(-0.03, 0.03), 0.5 - h / 2 + between(-0.03, 0.03), w, h);
  castShadow(canvas, outline, 10, 8, 0.4);
  const body: Colour = apart(mask, [32, 32, 34]) > 60 ? [32, 32, 34] : [214, 206, 186];
  canvas.polygon(outline, () => body);
  const [left, top] = outline[0] ?? [0, 0];
  const [right, bottom] = outline[2] ?? [0, 0];
  for (let n = 1; n < 8; n++) {
    const x = left + ((right - left) * n) / 9;
    const y = top + (bottom - top) * 0.4;
    canvas.polygon(square(x, y, Math.abs(right - left) / 40), () => [220, 220, 220]);
  }
  return outline;
}

/** A round, a boxy or a wiry thing that is no board; returns its outline. */
function layThing(canvas: Canvas, random: () => number): readonly Point[] {
  const between = (low: number, high: number) => low + (high - low) * random();
  const [x, y] = [canvas.width * between(0.4, 0.6), canvas.height * between(0.4, 0.6)];
  const reach = canvas.width * between(0.12, 0.3);
  const colour: Colour = [between(20, 240), between(20, 240), between(20, 240)];
  const sort = Math.floor(random() * 3);
  if (sort === 0) {
    const outline = ellipse(x, y, reach, reach * between(0.6, 1));
    castShadow(canvas, outline, 20, 24, 0.5);
    canvas.polygon(outline, (px, py) => {
      const light = 0.7 + (0.4 * (x - px + y - py)) / (2 * reach);
      return [colour[0] * light, colour[1] * light, colour[2] * light];
    });
    return outline;
  }
  if (sort === 1) {
    const [w, h, d] = [reach, reach * between(0.4, 0.8), reach * between(0.3, 0.6)];
    const lean = between(-0.2, 0.2) * reach;
    const front: Point[] = [
      [x - w, y],
      [x + w, y],
      [x + w * 0.96, y + h],
      [x - w * 0.96, y + h],
    ];
    const top: Point[] = [
      [x - w, y],
      [x - w * 0.8 + lean, y - d],
      [x + w * 0.8 + lean, y - d],
      [x + w, y],
    ];
    castShadow(canvas, front, 24, 20, 0.5);
    canvas.polygon(front, () => [colour[0] * 0.7, colour[1] * 0.7, colour[2] * 0.7]);
    canvas.polygon(top, () => colour);
    return [...front, ...top];
  }
  const way: Point[] = [];
  for (let n = 0; n <= 60; n++) {
    const angle = n * 0.25;
    const r = reach * (0.5 + 0.5 * Math.sin(angle * 0.37));
    way.push([x + r * Math.cos(angle), y + 0.8 * r * Math.sin(angle)]);
  }
  canvas.line(way, between(6, 14), () => colour);
  return way;
}

function layClutter(canvas: Canvas, random: () => number): void {
  const between = (low: number, high: number) => low + (high - low) * random();
  const side = Math.floor(random() * 4);
  const along = between(0.05, 0.95);
  const deep = between(0, 0.1);
  const [u, v] =
    side === 0 ? [along, deep] : side === 1 ? [along, 1 - deep] : side === 2 ? [deep, along] : [1 - deep, along];
  const [x, y] = [u * canvas.width, v * canvas.height];
  const colour: Colour = [between(20, 220), between(20, 220), between(20, 220)];
  const sort = Math.floor(random() * 4);
  if (sort === 0) {
    const outline = ellipse(x, y, between(20, 110), between(20, 110));
    castShadow(canvas, outline, 14, 12, 0.4);
    canvas.polygon(outline, () => colour);
    canvas.polygon(ellipse(x, y, 18, 18), () => [210, 210, 205]);
  } else if (sort === 1) {
    const angle = between(0, 6.3);
    const way: Point[] = [
      [x, y],
      [x + 160 * Math.cos(angle), y + 160 * Math.sin(angle)],
    ];
    canvas.line(way, between(5, 18), () => colour);
  } else if (sort === 2) {
    const bend = between(-120, 120);
    const way = Array.from({ length: 20 }, (_, n): Point => [x + n * 12 - 120, y + bend * Math.sin(n / 5)]);
    canvas.line(way, between(4, 9), () => colour);
  } else {
    for (let n = 0; n < 8; n++) {
      const dot = square(x + between(-90, 90), y + between(-90, 90), between(3, 9));
      canvas.polygon(dot, () => colour);
    }
  }
}

function layGround(canvas: Canvas, ground: Colour, sort: string, random: () => number): void {
  const [phase, angle] = [random() * 100, random() * 3];
  const whole: Point[] = [
    [0, 0],
    [canvas.width, 0],
    [canvas.width, canvas.height],
    [0, canvas.height],
  ];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  canvas.polygon(whole, (x, y) => {
    const [u, v] = [x * c + y * s, y * c - x * s];
    let light = 1;
    if (sort === 'grain') light += 0.07 * Math.sin(v / 6 + 3 * Math.sin(u / 190 + phase)) + 0.03 * Math.sin(v / 2.3);
    if (sort === 'clouds') light += 0.06 * Math.sin(u / 70 + 2 * Math.sin(v / 45 + phase)) * Math.sin(v / 90);
    if (sort === 'grid' && (Math.abs(u + 2000) % 90 < 3 || Math.abs(v + 2000) % 90 < 3)) light *= 1.5;
    return [ground[0] * light, ground[1] * light, ground[2] * light];
  });
  if (sort !== 'sheet') return;
  const edge = (0.1 + 0.1 * random()) * canvas.height;
  canvas.polygon([whole[0] ?? [0, 0], whole[1] ?? [0, 0], [canvas.width, edge], [0, edge * (0.6 + random())]], () => [
    110, 82, 60,
  ]);
}

function castShadow(canvas: Canvas, outline: readonly Point[], right: number, down: number, depth: number): void {
  for (let n = 1; n <= 4; n++) {
    const moved = outline.map(([x, y]): Point => [x + (right * n) / 4, y + (down * n) / 4]);
    canvas.shade(moved, 1 - depth / 4);
  }
}

class Canvas {
  readonly width: number;
  readonly height: number;
  private readonly values: Float32Array;

  constructor(width: number, height: number) {
    this.width = width;
    this.height = height;
    this.values = new Float32Array(3 * width * height);
  }

  polygon(outline: readonly Point[], colourAt: (x: number, y: number) => Colour): void {
    this.scan(outline, (at, x, y) => {
      this.values.set(colourAt(x, y), at);
    });
  }

  shade(outline: readonly Point[], by: number): void {
    this.scan(outline, (at) => {
      for (let k = at; k < at + 3; k++) this.values[k] = (this.values[k] ?? 0) * by;
    });
  }

  line(way: readonly Point[], thick: number, colourAt: (x: number, y: number) => Colour): void {
    for (let n = 1; n < way.length; n++) {
      const [[ax, ay], [bx, by]] = [way[n - 1] ?? [0, 0], way[n] ?? [0, 0]];
      const long = Math.hypot(bx - ax, by - ay) || 1;
      const [ox, oy] = [((ay - by) / long) * (thick / 2), ((bx - ax) / long) * (thick / 2)];
      this.polygon(
        [
          [ax + ox, ay + oy],
          [bx + ox, by + oy],
          [bx - ox, by - oy],
          [ax - ox, ay - oy],
        ],
        colourAt,
      );
      this.polygon(ellipse(bx, by, thick / 2, thick / 2), colourAt);
    }
  }

  /** Halves the canvas, and does what light, lens and sensor do. */
  develop(by: {
    blur: number;
    noise: number;
    fall: number;
    towards: number;
    gains: Colour;
    random: () => number;
  }): Picture {
    const [width, height] = [this.width / 2, this.height / 2];
    const half = new Float32Array(3 * width * height);
    for (let y = 0, to = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        for (let k = 0; k < 3; k++, to++) {
          const at = 3 * (2 * y * this.width + 2 * x) + k;
          const below = at + 3 * this.width;
          const sum = (n: number) => (this.values[n] ?? 0) + (this.values[n + 3] ?? 0);
          const away = ((x / width - 0.5) * Math.cos(by.towards) + (y / height - 0.5) * Math.sin(by.towards)) * by.fall;
          half[to] = ((sum(at) + sum(below)) / 4) * (1 + away) * (by.gains[k] ?? 1);
        }
      }
    }
    const rgb = new Uint8Array(half.length);
    for (let y = 0, to = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        for (let k = 0; k < 3; k++, to++) {
          let sum = 0;
          let count = 0;
          for (let v = Math.max(0, y - by.blur); v <= Math.min(height - 1, y + by.blur); v++) {
            for (let u = Math.max(0, x - by.blur); u <= Math.min(width - 1, x + by.blur); u++, count++) {
              sum += half[3 * (v * width + u) + k] ?? 0;
            }
          }
          const grain = (by.random() + by.random() + by.random() - 1.5) * by.noise;
          rgb[to] = Math.min(255, Math.max(0, Math.round(sum / count + grain)));
        }
      }
    }
    return pictureFrom(width, height, rgb);
  }

  private scan(outline: readonly Point[], visit: (at: number, x: number, y: number) => void): void {
    const tops = outline.map(([, y]) => y);
    const first = Math.max(0, Math.floor(Math.min(...tops)));
    const last = Math.min(this.height - 1, Math.ceil(Math.max(...tops)));
    for (let row = first; row <= last; row++) {
      const y = row + 0.5;
      const cuts: number[] = [];
      outline.forEach(([ax, ay], n) => {
        const [bx, by] = outline[(n + 1) % outline.length] ?? [0, 0];
        if (ay <= y !== by <= y) cuts.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
      });
      cuts.sort((a, b) => a - b);
      for (let n = 0; n + 1 < cuts.length; n += 2) {
        const from = Math.max(0, Math.ceil((cuts[n] ?? 0) - 0.5));
        const to = Math.min(this.width - 1, Math.ceil((cuts[n + 1] ?? 0) - 0.5) - 1);
        for (let column = from; column <= to; column++) visit(3 * (row * this.width + column), column + 0.5, y);
      }
    }
  }
}

function ellipse(x: number, y: number, across: number, down: number): Point[] {
  return Array.from({ length: 40 }, (_, n): Point => {
    const angle = (n * Math.PI) / 20;
    return [x + across * Math.cos(angle), y + down * Math.sin(angle)];
  });
}

function square(x: number, y: number, half: number): Point[] {
  return [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];
}

function apart(one: Colour, other: Colour): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}

function clockwiseFromTopLeft(outline: readonly Point[]): readonly Point[] {
  const first = outline.reduce((best, [x, y], n) => {
    const [bx, by] = outline[best] ?? [0, 0];
    return x + y < bx + by ? n : best;
  }, 0);
  return outline.map((_, n) => outline[(first + n) % outline.length] ?? [0, 0]);
}

function boxOf(points: readonly Point[]): readonly [number, number, number, number] {
  const within = (value: number) => Math.min(1, Math.max(0, value));
  const xs = points.map(([x]) => within(x));
  const ys = points.map(([, y]) => within(y));
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return [left, top, Math.max(...xs) - left, Math.max(...ys) - top];
}
