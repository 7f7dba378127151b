import type { Build } from '#core/build.ts';
import { type Claim, confirmed, declared, unknown } from '#core/claim.ts';
import { type Connection, connectionId, type Endpoint } from '#core/connection.ts';
import type { Facts } from '#core/facts.ts';
import type { Part } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import type { Amount } from '#core/quantity.ts';
import { noSettings } from '#core/settings.ts';
import type { Join, PartUse, Section, StepFacts } from '#core/step.ts';
import type { Block } from '#core/text.ts';

/** A part in short: `R1,R2` are references; a name without a digit stands for a part that has none. */
export interface SmallPart {
  readonly name: string;
  readonly n?: number;
  readonly unit?: string;
  readonly approximate?: boolean;
  readonly fitted?: boolean;
}

/** A step in short. `uses` are references or names, with an amount where one is given. */
export interface SmallStep {
  readonly id: string;
  readonly uses?: readonly (string | readonly [name: string, n: number, unit?: string])[];
  /** All amounts of `uses` are approximate. */
  readonly roughly?: boolean;
  /** A paragraph of the step's text. */
  readonly prose?: string;
  readonly reads?: readonly string[];
  readonly tools?: readonly string[];
  readonly makes?: readonly string[];
  readonly connects?: readonly (readonly [string, string])[];
  readonly removes?: readonly (string | readonly [string, string])[];
  readonly loads?: readonly string[];
  readonly power?: readonly ['on' | 'off', 'on' | 'off'];
  readonly measures?: readonly (readonly [between: string, and: string, expect: string])[];
  readonly warning?: string;
  readonly variant?: string;
  readonly optional?: boolean;
}

export interface SmallBuild {
  readonly parts?: readonly SmallPart[];
  readonly wiring?: readonly (readonly [from: string, to: string, net?: string])[];
  readonly tools?: readonly string[];
  readonly steps?: readonly SmallStep[];
}

/** A build and its facts made by hand, for tests that must not depend on how files are read. */
export function smallBuild(small: SmallBuild): { build: Build; facts: Facts } {
  const parts = (small.parts ?? []).map(partFrom);
  const connections = (small.wiring ?? []).map(([from, to, net], index) => rowFrom(from, to, net ?? null, index));
  const steps = small.steps ?? [];
  const build: Build = {
    name: 'small',
    adopted: false,
    settings: noSettings,
    roles: [],
    files: [{ path: 'guide.md', bytes: 1 }],
    partsLists: parts.length === 0 ? [] : [{ columns: [], parts, file: 'parts.csv' }],
    parts,
    tools: (small.tools ?? []).map((name) => ({
      name,
      needed: true,
      link: null,
      note: null,
      place: at('tools.csv', 1, name),
    })),
    connections,
    instructions: { title: 'Small', sections: steps.map(sectionFrom) },
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
  };
  const facts: Facts = {
    steps: Object.fromEntries(steps.map((step, index) => [step.id, factsFrom(step, index, parts, connections)])),
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
  };
  return { build, facts };
}

/** Words at a line of a file. */
export function at(file: string, line: number, quote: string): TextPlace {
  return { kind: 'text', file, span: [line * 1000, line * 1000 + quote.length], line, column: 1, quote };
}

function partFrom({ name, n, unit = 'pcs', approximate = false, fitted = true }: SmallPart, index: number): Part {
  const refs = /^[A-Z]+\d/.test(name) ? name.split(',') : [];
  const amount: Amount = { n: n ?? Math.max(1, refs.length), unit, approximate };
  const place = at('parts.csv', index + 2, name);
  return {
    id: refs[0] ?? name,
    refs,
    amount: confirmed(declared(amount, place)),
    description: name,
    value: unknown('a value'),
    ratings: [],
    package: null,
    mpn: null,
    supplier: null,
    links: [],
    price: null,
    substitution: null,
    note: null,
    fitted,
    section: null,
    other: {},
    place,
    cells: {},
  };
}

function rowFrom(from: string, to: string, net: string | null, index: number): Connection {
  const [a, b] = [endFrom(from), endFrom(to)];
  const place = at('wiring.csv', index + 2, `${from},${to}`);
  return {
    id: connectionId(a, b),
    from: a,
    to: b,
    net,
    colour: null,
    gauge: null,
    length: null,
    note: null,
    place,
    cells: {},
  };
}

function endFrom(text: string): Endpoint {
  const [ref = '', pin = ''] = text.split('.');
  return { ref, pin };
}

function sectionFrom({ id, prose }: SmallStep, index: number): Section {
  const place = at('guide.md', index * 10 + 1, id);
  return {
    id,
    heading: id,
    depth: 2,
    parents: [],
    role: 'step',
    file: 'guide.md',
    place,
    blocks: prose === undefined ? [] : [paragraphFrom(prose, index)],
    pictures: [],
    facts: [],
    signature: id,
  };
}

function paragraphFrom(words: string, index: number): Block {
  return {
    kind: 'paragraph',
    place: at('guide.md', index * 10 + 5, words),
    children: [{ kind: 'text', value: words }],
  };
}

function factsFrom(step: SmallStep, index: number, parts: readonly Part[], rows: readonly Connection[]): StepFacts {
  const place = (quote: string) => at('guide.md', index * 10 + 2, quote);
  const use = (written: string | readonly [string, number, string?]): Claim<PartUse> => {
    const [named, n, unit] =
      typeof written === 'string' ? [written, 1, 'pcs'] : [written[0], written[1], written[2] ?? 'pcs'];
    const part = parts.find(
      ({ refs, id, description }) => refs.includes(named) || id === named || description === named,
    );
    const ref = part?.refs.includes(named) || /^[A-Z]+\d+$/.test(named) ? named : null;
    const quote = typeof written === 'string' ? named : `${named} × ${n}`;
    return declared(
      { named, part: part?.id ?? null, ref, amount: { n, unit, approximate: step.roughly === true } },
      place(quote),
    );
  };
  const join = ([a, b]: readonly [string, string]): Claim<Join> => {
    const [from, to] = [endFrom(a), endFrom(b)];
    const id = connectionId(from, to);
    const connection = rows.some((row) => row.id === id) ? id : null;
    return declared({ from, to, id, connection }, place(`${a} – ${b}`));
  };
  return {
    uses: [
      ...(step.uses ?? []).map(use),
      ...(step.reads ?? []).map((name): Claim<PartUse> => ({ ...use(name), basis: 'read', confidence: 0.6 })),
    ],
    tools: (step.tools ?? []).map((tool) => declared(tool, place(tool))),
    makes: (step.makes ?? []).map((name) => declared(name, place(name))),
    connects: (step.connects ?? []).map(join),
    removes: (step.removes ?? []).map((what) => (typeof what === 'string' ? use(what) : join(what))),
    loads: (step.loads ?? []).map((path) => declared({ path, onto: null, exists: true }, place(path))),
    power: step.power === undefined ? null : declared({ during: step.power[0], after: step.power[1] }, place('power')),
    hazards:
      step.warning === undefined ? [] : [declared({ word: 'warning', message: step.warning }, place(step.warning))],
    measures: (step.measures ?? []).map(([a, b, expect]) =>
      declared({ between: [a, b], expect, text: `${a} – ${b} ${expect}` }, place(expect)),
    ),
    expects: [],
    minutes: null,
    side: null,
    optional: step.optional === true ? declared('yes', place('optional')) : null,
    variant: step.variant === undefined ? null : declared(step.variant, place(step.variant)),
    irreversible: null,
  };
}
