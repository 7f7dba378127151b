import type { SourceFacts, SourceLanguage } from '#core/code.ts';
import type { Path, Span, TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import { readConstants, type Taken } from './facts/readConstants.ts';
import { readIncludes } from './facts/readIncludes.ts';
import { type PlaceMaker, readPins } from './facts/readPins.ts';
import { type PlacedSecret, readSecrets } from './facts/readSecrets.ts';
import { link } from './linking/link.ts';
import type { SourceContext } from './linking/sourceContext.ts';
import { lowerCpp } from './lowering/lowerCpp.ts';
import { lowerPython } from './lowering/lowerPython.ts';
import type { Program } from './lowering/program.ts';
import { maskedPlace, secretsAt } from './secrets.ts';

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
  const found = byFile(readSecrets(linked));
  const placeAt: PlaceMaker = (source, span) => maskedPlace(source, span, spansOf(found.get(source.file)));
  const { pins, problems } = readPins(linked, placeAt);
  const taken = takenBy(
    pins.map(({ place }) => place),
    found,
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
      secrets: secretsAt(program.source, found.get(file) ?? []),
    };
  });
  return { sources, problems: [...problems, ...programs.flatMap((program) => faultProblem(program, placeAt))] };
}

function byFile(secrets: readonly PlacedSecret[]): Map<Path, PlacedSecret[]> {
  const found = new Map<Path, PlacedSecret[]>();
  for (const secret of secrets) found.set(secret.source.file, [...(found.get(secret.source.file) ?? []), secret]);
  return found;
}

function spansOf(secrets: readonly PlacedSecret[] = []): Span[] {
  return secrets.map(({ span }) => span);
}

/** Values that are pins or credentials are no settings besides. */
function takenBy(pins: readonly TextPlace[], secrets: ReadonlyMap<Path, readonly PlacedSecret[]>): Taken {
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
