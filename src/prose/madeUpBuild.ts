import type { Build } from '#core/build.ts';
import { confirmed, declared, unknown } from '#core/claim.ts';
import { connectionId, type Endpoint } from '#core/connection.ts';
import type { LogNote } from '#core/log.ts';
import type { Part } from '#core/part.ts';
import { noSettings } from '#core/settings.ts';
import { lineStartsOf, placeOf, type SourceText } from '#core/sourceText.ts';
import type { FactLabel, Section } from '#core/step.ts';
import type { Block } from '#core/text.ts';

/** What a test says of a build in few words. */
export interface MadeUp {
  /** `R1, R2: resistor` or `W1: wire 2 m`, one a part; a name without references is its own id. */
  readonly parts?: readonly string[];
  readonly tools?: readonly string[];
  /** `U1.D5 R1.1`, with a note after a bar. */
  readonly wiring?: readonly string[];
  readonly files?: readonly string[];
  /** A file's code pins: `firmware/main.cpp: D5 D6`. */
  readonly code?: readonly string[];
  /** Headings `## …`, facts `- Label: …`, tables, and paragraphs parted by blank lines. */
  readonly guide?: string;
  readonly log?: string;
}

/** A build for tests of what prose says, with real places in `guide.md`; every section is a step. */
export function madeUpBuild(made: MadeUp): Build {
  const guide = sourceOf('guide.md', made.guide ?? '');
  const log = sourceOf('log.md', made.log ?? '');
  return {
    name: 'made up',
    adopted: false,
    settings: noSettings,
    roles: [],
    files: (made.files ?? []).map((path) => ({ path, bytes: 1 })),
    partsLists: [],
    parts: (made.parts ?? []).map(partFrom),
    tools: (made.tools ?? []).map((name) => ({
      name,
      needed: true,
      link: null,
      note: null,
      place: wordsIn('tools.csv', name),
    })),
    connections: (made.wiring ?? []).map(connectionFrom),
    instructions: { title: null, sections: sectionsIn(guide) },
    beside: [],
    errata: [],
    choices: [],
    log: made.log === undefined ? [] : [noteFrom(log)],
    sources: (made.code ?? []).map(sourceFactsFrom),
    dependencies: [],
    targets: [],
    secrets: [],
    shots: [],
    licences: [],
    texts: new Map([[guide.file, guide]]),
    problems: [],
  };
}

function sourceOf(file: string, text: string): SourceText {
  return { file, text, encoding: 'utf-8', bom: false, hash: '', lineStarts: lineStartsOf(text) };
}

function wordsIn(file: string, words: string) {
  return placeOf(sourceOf(file, words), [0, words.length]);
}

function partFrom(line: string): Part {
  const [, names = '', description = '', length] = /^([^:]*):?\s*(.*?)(?:\s(\d+(?:\.\d+)?) m)?$/.exec(line) ?? [];
  const refs = names.split(', ').filter((name) => /^[A-Z]+\d+$/.test(name));
  const amount = length === undefined ? { n: Math.max(1, refs.length), unit: 'pcs' } : { n: Number(length), unit: 'm' };
  const place = wordsIn('parts.csv', line);
  return {
    id: refs[0] ?? names,
    refs,
    amount: confirmed(declared({ ...amount, approximate: false }, place)),
    description: description === '' ? names : description,
    value: unknown('a value'),
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
    place,
    cells: {},
  };
}

function connectionFrom(line: string): Build['connections'][number] {
  const [ends = '', note] = line.split(' | ');
  const [from, to] = ends.split(' ').map(endFrom);
  const end: Endpoint = { ref: '', pin: '' };
  const place = wordsIn('wiring.csv', line);
  return {
    id: connectionId(from ?? end, to ?? end),
    from: from ?? end,
    to: to ?? end,
    net: null,
    colour: null,
    gauge: null,
    length: null,
    note: note ?? null,
    place,
    cells: note === undefined ? {} : { note: wordsIn('wiring.csv', note) },
  };
}

function endFrom(text: string): Endpoint {
  const [ref = '', ...pin] = text.split('.');
  return { ref, pin: pin.join('.') };
}

function sourceFactsFrom(line: string): Build['sources'][number] {
  const [file = '', pins = ''] = line.split(': ');
  return {
    file,
    language: 'cpp',
    pins: pins.split(' ').map((pin) => {
      const place = wordsIn(file, pin);
      return { name: null, pin, uses: ['output'], place, usedAt: [], group: null };
    }),
    includes: [],
    constants: [],
    secrets: [],
  };
}

function noteFrom(source: SourceText): LogNote {
  const place = placeOf(source, [0, source.text.length]);
  const empty = { mistake: null, cause: null, remedy: null, reading: null, step: null };
  return { at: null, text: source.text, ...empty, file: source.file, place };
}

function sectionsIn(source: SourceText): Section[] {
  return [...source.text.matchAll(/^## (.*)\n((?:(?!## )[^\n]*\n?)*)/gm)].map(
    ([whole, heading = '', body = ''], index, all) => {
      const start = all[index]?.index ?? 0;
      const at = start + whole.length - body.length;
      const facts = [...body.matchAll(/^- ([A-Z][a-z]+):(?: (.*))?$/gm)].map((match) => {
        const value = match[2] ?? '';
        const end = at + match.index + match[0].length;
        return {
          label: (match[1] ?? '').toLowerCase() as FactLabel,
          value,
          place: placeOf(source, [end - value.length, end]),
        };
      });
      return {
        id: heading.toLowerCase().replaceAll(' ', '-'),
        heading,
        depth: 2,
        parents: [],
        role: 'step' as const,
        file: source.file,
        place: placeOf(source, [start + 3, start + 3 + heading.length]),
        blocks: blocksIn(source, at, body),
        pictures: [],
        facts,
        signature: '',
      };
    },
  );
}

function blocksIn(source: SourceText, at: number, body: string): Block[] {
  return [...body.matchAll(/(?:^(?!- [A-Z][a-z]+:)[^\n]*\S[^\n]*\n?)+/gm)].map((match): Block => {
    const words = match[0].trimEnd();
    const place = placeOf(source, [at + match.index, at + match.index + words.length]);
    return words.startsWith('|')
      ? { kind: 'table', align: [], header: [], rows: [], place }
      : { kind: 'paragraph', children: [{ kind: 'text', value: words }], place };
  });
}
