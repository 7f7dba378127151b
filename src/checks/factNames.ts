import type { Judged } from '#core/assembled.ts';
import { isRealPart } from './realParts.ts';

interface FactSource {
  readonly present: (judged: Judged) => boolean;
  /** What to say where it is absent. */
  readonly lacking: string;
}

/** What a check may need, and how its absence reads. */
const sources = {
  files: { present: ({ build }) => build.files.length > 0, lacking: 'the folder holds no files' },
  guide: { present: ({ build }) => build.instructions.sections.length > 0, lacking: 'there is no guide text' },
  steps: {
    present: ({ build }) => build.instructions.sections.some(({ role }) => role === 'step'),
    lacking: 'the guide has no steps',
  },
  parts: { present: ({ build }) => build.parts.some(isRealPart), lacking: 'there is no parts list' },
  tools: { present: ({ build }) => build.tools.length > 0, lacking: 'there is no list of tools' },
  wiring: { present: ({ build }) => build.connections.length > 0, lacking: 'there is no wiring table' },
  code: { present: ({ build }) => build.sources.length > 0, lacking: 'there is no code' },
  'code or wiring': {
    present: ({ build }) => build.sources.length + build.connections.length > 0,
    lacking: 'there is neither code nor a wiring table',
  },
  'code or steps': {
    present: ({ build }) => build.sources.length > 0 || build.instructions.sections.some(({ role }) => role === 'step'),
    lacking: 'there is neither code nor a step that loads any',
  },
  'uses or wires': {
    present: ({ build, facts }) =>
      build.connections.length > 0 ||
      Object.values(facts.steps).some((step) => step.uses.length + step.connects.length > 0),
    lacking: 'neither steps nor wiring name any parts',
  },
  wires: {
    present: ({ build, facts }) =>
      build.connections.length > 0 || Object.values(facts.steps).some(({ connects }) => connects.length > 0),
    lacking: 'neither a wiring table nor a step says what is connected',
  },
  'values in the parts list': {
    present: ({ build }) => build.parts.some(({ value }) => value.is !== 'unknown'),
    lacking: 'the parts list gives no values',
  },
  pictures: {
    present: ({ build }) =>
      [...build.instructions.sections, ...build.beside].some(({ pictures }) => pictures.length > 0),
    lacking: 'the guide shows no pictures',
  },
} satisfies Readonly<Record<string, FactSource>>;

export type FactName = keyof typeof sources;

/** The facts of `names` that a build lacks, in words; empty where it has them all. */
export function lackingFacts(names: readonly FactName[], judged: Judged): string[] {
  const all: Readonly<Record<FactName, FactSource>> = sources;
  return names
    .map((name) => all[name])
    .filter(({ present }) => !present(judged))
    .map(({ lacking }) => lacking);
}
