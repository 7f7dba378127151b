import { guideLines, type StepLines, spotsOf, stepsOf } from '../guideOf.ts';
import type { Change, Draft, Operator, Spot } from '../mutant.ts';
import { linesIn, type Project } from '../project.ts';

/** Hazards by the words that cautions of the builds use for them. */
const hazards: Readonly<Record<string, RegExp>> = {
  'the hot iron': /tip of the iron/i,
  'solder smoke': /solder smoke/i,
  'cut leads': /leads fly/i,
  'static charge': /static charge/i,
  'a lithium cell': /lithium/i,
  'a coin cell': /coin cell/i,
  mains: /mains voltage|230 V are switched/i,
  'a drill': /the drill can/i,
  'a knife': /blade of the knife/i,
  'a reversed capacitor': /can burst/i,
  'bright light': /dazzle|spots before your eyes/i,
  'hot air': /hot-air gun can/i,
  'needles and scissors': /needles and scissors/i,
  'nail varnish': /nail varnish burns/i,
  'moving parts': /turns without warning/i,
};

interface Told {
  readonly hazard: string;
  readonly lines: readonly (Spot & { words: string })[];
  readonly steps: readonly StepLines[];
}

/** What the guide warns of, with every line that does and the steps in which it stands. */
function toldIn(project: Project): Told[] {
  const steps = stepsOf(project);
  return Object.entries(hazards).flatMap(([hazard, words]) => {
    const lines = guideLines(project).filter(
      (line) => words.test(line.words) && /^- (?:Danger|Warning|Caution|Notice)|^\*\*/.test(line.words),
    );
    const inSteps = steps.filter((step) =>
      lines.some(({ file, line }) => file === step.file && line > step.first && line <= step.last),
    );
    return inSteps.length === 0 ? [] : [{ hazard, lines, steps: inSteps }];
  });
}

/** Plain words that tell of a hazard without a signal word; they go too. */
const plainWords: Readonly<Record<string, RegExp>> = {
  'solder smoke': /open(?:ed)? (?:a )?window/i,
  'the hot iron': /from the iron|over the iron/i,
};

function withoutPlainWords(project: Project, hazard: string, file: string): Map<number, string> {
  const plain = plainWords[hazard];
  if (plain === undefined) return new Map();
  const said = guideLines(project).filter(
    (line) => line.file === file && plain.test(line.words) && !/^[-|#]/.test(line.words),
  );
  return new Map(
    said.map(({ line, words }) => [
      line,
      words
        .split(/(?<=\.) /)
        .filter((sentence) => !plain.test(sentence))
        .join(' '),
    ]),
  );
}

function without(project: Project, hazard: string, lines: readonly Spot[], after?: Spot & { words: string }): Change[] {
  return project.guide
    .filter(
      (file) =>
        lines.some((line) => line.file === file) ||
        after?.file === file ||
        withoutPlainWords(project, hazard, file).size > 0,
    )
    .map((file) => ({
      file,
      words: withoutPlainWords(project, hazard, file),
      without: new Set(lines.filter((line) => line.file === file).map(({ line }) => line)),
      ...(after?.file === file ? { after: new Map([[after.line, ['', after.words, '']]]) } : {}),
    }));
}

/** Nothing warns of a hazard any more. */
export const cautionDropped: Operator = (project) =>
  toldIn(project).map(
    ({ hazard, lines, steps }): Draft => ({
      title: `nothing warns of ${hazard}`,
      changes: without(project, hazard, lines),
      at: steps.flatMap(spotsOf),
      reaches: everyPart(project),
      why: 'A builder gets hurt, or hurts a part, without having been told.',
    }),
  );

/** The caution comes at the end of the step that it is about, and nowhere before. */
export const cautionMoved: Operator = (project) =>
  toldIn(project).flatMap(({ hazard, lines, steps }): Draft[] => {
    const [first] = steps;
    const line = lines.find(({ words }) => words.startsWith('- '));
    if (first === undefined || line === undefined) return [];
    const [, label = '', message = ''] = /^- ([A-Z][a-z]+): (.*)$/.exec(line.words) ?? [];
    const last = lastProseOf(project, first);
    return [
      {
        title: `the caution about ${hazard} comes after the work`,
        changes: without(project, hazard, lines, { ...last, words: `**${label}:** ${message}` }),
        at: spotsOf(first),
        reaches: [...steps.flatMap(spotsOf), ...everyPart(project)],
        why: 'A builder reads the caution with the work done.',
      },
    ];
  });

function lastProseOf(project: Project, step: StepLines): Spot {
  const last = step.prose.at(-1);
  return last ?? { file: step.file, line: Math.min(step.last, linesIn(project, step.file).length) };
}

function everyPart(project: Project): Spot[] {
  return [...linesIn(project, project.parts), ''].map((_, index) => ({ file: project.parts, line: index + 1 }));
}
