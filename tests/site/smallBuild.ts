import type { Assembled } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import { type Claim, confirmed, declared } from '#core/claim.ts';
import { type Connection, connectionId } from '#core/connection.ts';
import type { Part } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import { noSettings, type Settings } from '#core/settings.ts';
import type { Shot } from '#core/shot.ts';
import { noFacts, type Section, type StepFacts } from '#core/step.ts';
import type { Block, Inline, PictureRef } from '#core/text.ts';

/** What a test says of its build; everything else is empty. */
export interface Sketch {
  readonly settings?: Partial<Settings>;
  readonly sections?: readonly Section[];
  readonly facts?: Readonly<Record<string, Partial<StepFacts>>>;
  readonly build?: Partial<Build>;
  /** Steps to which the rehearsal comes with the power on. */
  readonly powered?: readonly string[];
}

export function assembled(sketch: Sketch): Assembled {
  const steps = Object.entries(sketch.facts ?? {}).map(([id, facts]) => [id, { ...noFacts, ...facts }] as const);
  const state = {
    bag: {},
    tools: [],
    made: [],
    loaded: [],
    powered: true,
    warned: [],
    side: null,
    explained: [],
    clock: { hands: 0, wait: 0, untold: 0 },
  };
  return {
    build: {
      name: 'greenhouse',
      adopted: true,
      settings: { ...noSettings, ...sketch.settings },
      roles: [],
      files: [],
      partsLists: [],
      parts: [],
      tools: [],
      connections: [],
      instructions: { title: null, sections: sketch.sections ?? [] },
      beside: [],
      log: [],
      errata: [],
      choices: [],
      sources: [],
      dependencies: [],
      targets: [],
      secrets: [],
      shots: [],
      licences: [],
      texts: new Map(),
      problems: [],
      ...sketch.build,
    },
    facts: {
      steps: Object.fromEntries(steps),
      language: { code: null, known: 'unknown' },
      controllers: [],
      drivenPins: [],
      values: [],
      pins: [],
      actions: [],
      hazards: [],
      proposals: [],
      terms: [],
      temporaries: [],
      openWaits: [],
      problems: [],
    },
    ledger: {
      steps: (sketch.powered ?? []).map((step) => ({ step, before: state, after: state })),
      variants: [],
      coverage: { parts: null, connections: null, tools: null },
      stops: [],
    },
    findings: [],
    asOf: '2025-11-09T20:15:00Z',
  };
}

export function section(id: string, role: Section['role'], depth: number, ...blocks: Block[]): Section {
  return {
    id,
    heading: headingOf(id),
    depth,
    parents: [],
    role,
    file: 'guide.md',
    place: place(headingOf(id)),
    blocks,
    pictures: blocks.flatMap((block) => (block.kind === 'paragraph' ? block.children : [])).flatMap(pictureIn),
    facts: [],
    signature: id,
  };
}

export function step(id: string, ...blocks: Block[]): Section {
  return section(id, 'step', 2, ...blocks);
}

export function paragraph(...children: (string | Inline)[]): Block {
  const nodes = children.map((child): Inline => (typeof child === 'string' ? { kind: 'text', value: child } : child));
  return { kind: 'paragraph', children: nodes, place: place(JSON.stringify(nodes)) };
}

export function picture(path: string | null, more: Partial<PictureRef> = {}): Inline {
  const url = path ?? 'https://example.org/far.jpg';
  return {
    kind: 'picture',
    picture: { url, path, exists: true, alt: 'a board', title: null, place: place(url), ...more },
  };
}

export function link(url: string, words = 'here'): Inline {
  return { kind: 'link', url, children: [{ kind: 'text', value: words }] };
}

export function shot(path: string, width: number | null, kind: Shot['kind'] = 'jpeg'): Shot {
  const height = width === null ? null : (width * 3) / 4;
  return {
    path,
    hash: path,
    bytes: 1,
    kind,
    width,
    height,
    takenAt: null,
    camera: null,
    leaks: { position: false, fields: [] },
  };
}

export function part(id: string, description: string, more: Partial<Part> = {}): Part {
  return {
    id,
    refs: [id],
    amount: confirmed(declared({ n: 1, unit: 'pcs', approximate: false })),
    description,
    value: { is: 'unknown', lacking: 'a value' },
    ratings: [],
    package: null,
    mpn: null,
    supplier: null,
    links: [],
    price: null,
    substitution: null,
    note: null,
    fitted: true,
    section: null,
    other: {},
    place: place(id),
    cells: {},
    ...more,
  };
}

export function connection(from: string, to: string, more: Partial<Connection> = {}): Connection {
  const ends = { from: end(from), to: end(to) };
  const nothing = { net: null, colour: null, gauge: null, length: null, note: null };
  return {
    id: connectionId(ends.from, ends.to),
    ...ends,
    ...nothing,
    place: place(`${from},${to}`),
    cells: {},
    ...more,
  };
}

export function end(written: string): Connection['from'] {
  const [ref = '', pin = ''] = written.split('.');
  return { ref, pin };
}

export function read<T>(value: T): Claim<T> {
  return { value, basis: 'read', places: [], confidence: 0.6 };
}

export function place(quote: string, at = 0): TextPlace {
  return { kind: 'text', file: 'guide.md', span: [at, at + quote.length], line: 1, column: 1, quote };
}

function headingOf(id: string): string {
  return id.charAt(0).toUpperCase() + id.slice(1).replaceAll('-', ' ');
}

function pictureIn(node: Inline): PictureRef[] {
  return node.kind === 'picture' ? [node.picture] : [];
}
