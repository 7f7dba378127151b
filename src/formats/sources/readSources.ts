import type { Secret, SourceFacts, SourceLanguage } from '#core/code.ts';
import type { Path, Span, TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import { readConstants, type Taken } from './facts/readConstants.ts';
import { readIncludes } from './facts/readIncludes.ts';
import { type PlaceMaker, readPins } from './facts/readPins.ts';
import { readSecrets } from './facts/readSecrets.ts';
import { type Linked, link } from './linking/link.ts';
import type { SourceContext } from './linking/sourceContext.ts';
import { lowerCpp } from './lowering/lowerCpp.ts';
import { lowerPython } from './lowering/lowerPython.ts';
import type { Program } from './lowering/program.ts';
import { findRepeatedSecrets, maskedPlace, secretsAt } from './secrets.ts';

/** A source file and its tree. */
export interface ParsedSource {
  readonly source: SourceText;
  readonly language: SourceLanguage;
  readonly tree: SyntaxNode;
}

/**
 * What the code of a build says, one record a file in the order given. Names are followed across files: a pin that
 * `pins.h` states and `main.cpp` uses is one pin of `pins.h`, used in `main.cpp`.
 */
export function readSources(
  files: readonly ParsedSource[],
  context: SourceContext,
): { sources: SourceFacts[]; problems: Problem[] } {
  const programs = files.map(({ source, language, tree }) =>
    language === 'cpp' ? lowerCpp(source, tree) : lowerPython(source, tree),
  );
  const linked = link(programs, context);
  const secrets = secretsOf(programs, linked);
  const placeAt: PlaceMaker = (source, span) => maskedPlace(source, span, spansOf(secrets.get(source.file)));
  const { pins, problems } = readPins(linked, placeAt);
  const taken = takenBy(
    pins.map(({ place }) => place),
    secrets,
  );
  const constants = readConstants(linked, placeAt, taken);
  const sources = programs.map((program): SourceFacts => {
    const { file } = program.source;
    return {
      file,
      language: program.language,
      pins: pins.filter(({ place }) => place.file === file),
      includes: readIncludes(program, context, placeAt),
      constants: constants.filter(({ place }) => place.file === file),
      secrets: secrets.get(file) ?? [],
    };
  });
  return { sources, problems: [...problems, ...programs.flatMap((program) => faultProblem(program, placeAt))] };
}

/** Credentials by file, in order; those that stand a second time under a harmless name included. */
function secretsOf(programs: readonly Program[], linked: Linked): Map<Path, Secret[]> {
  const found = readSecrets(linked);
  const byFile = new Map(
    programs.map(({ source }) => [
      source.file,
      secretsAt(
        source,
        found.filter((secret) => secret.source === source),
      ),
    ]),
  );
  const known = [...byFile.values()].flat();
  for (const secret of findRepeatedSecrets(
    programs.map(({ source }) => source),
    known,
  )) {
    byFile.get(secret.place.file)?.push(secret);
  }
  for (const secrets of byFile.values()) secrets.sort((a, b) => a.place.span[0] - b.place.span[0]);
  return byFile;
}

function spansOf(secrets: readonly Secret[] = []): Span[] {
  return secrets.map(({ place }) => place.span);
}

/** Values that are pins or credentials are no settings besides. */
function takenBy(pins: readonly TextPlace[], secrets: ReadonlyMap<Path, readonly Secret[]>): Taken {
  const starts = new Set(pins.map(({ file, span }) => `${file}:${span[0]}`));
  return ({ file }, [start, end]) =>
    starts.has(`${file}:${start}`) || spansOf(secrets.get(file)).some((secret) => secret[0] < end && secret[1] > start);
}

/** Share of a file, in characters, above which what was read of it cannot stand for the whole. */
const mostFaults = 0.25;

function faultProblem({ source, unread, language }: Program, placeAt: PlaceMaker): Problem[] {
  const faults = unread.filter(({ why }) => why === 'fault');
  const [first] = faults;
  const extent = faults.reduce((sum, { span }) => sum + span[1] - span[0], 0);
  if (!first || extent < source.text.trim().length * mostFaults) return [];
  const name = language === 'cpp' ? 'C++' : 'Python';
  const start: Span = [first.span[0], Math.min(first.span[1], first.span[0] + 40)];
  return [
    {
      place: placeAt(source, start),
      message: `Most of the file could not be read as ${name}; the first stretch that makes no sense begins here.`,
      remedy: 'Check that the file compiles and that its ending fits its language.',
    },
  ];
}
