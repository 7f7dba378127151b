import type { Spot } from './mutant.ts';
import { linesIn, type Project } from './project.ts';

/** A labelled fact of a step. */
export interface FactLine extends Spot {
  readonly label: string;
  readonly value: string;
  readonly words: string;
}

/** A step of the guide: a heading that opens with facts, to the line before the next heading. */
export interface StepLines {
  readonly file: string;
  readonly heading: string;
  readonly first: number;
  readonly last: number;
  readonly facts: readonly FactLine[];
  /** Lines of running text, without facts, pictures and tables. */
  readonly prose: readonly (Spot & { readonly words: string })[];
}

/** The steps in reading order, read without the product's own readers. */
export function stepsOf(project: Project): StepLines[] {
  return project.guide.flatMap((file) => {
    const lines = linesIn(project, file);
    const heads = lines.flatMap((words, index) => (/^#{1,4} /.test(words) ? [index + 1] : []));
    return heads
      .map((first, index) => stepFrom(file, lines, first, (heads[index + 1] ?? lines.length + 1) - 1))
      .filter(({ facts }) => facts.some(({ label }) => label === 'power'));
  });
}

function stepFrom(file: string, lines: readonly string[], first: number, last: number): StepLines {
  const own = lines.slice(first, last).map((words, index) => ({ file, line: first + 1 + index, words }));
  const facts = own.flatMap((line): FactLine[] => {
    const [, label = '', value = ''] = /^- ([A-Z][a-z]+): (.*)$/.exec(line.words) ?? [];
    return label === '' ? [] : [{ ...line, label: label.toLowerCase(), value }];
  });
  return {
    file,
    heading: (lines[first - 1] ?? '').replace(/^#+ /, ''),
    first,
    last,
    facts,
    prose: own.filter(({ words }) => words !== '' && !/^(?:- |\||!\[)/.test(words)),
  };
}

export function factsOf(step: StepLines, label: string): FactLine[] {
  return step.facts.filter((fact) => fact.label === label);
}

/** Every line of a step. */
export function spotsOf({ file, first, last }: StepLines): Spot[] {
  return Array.from({ length: last - first + 1 }, (_, index) => ({ file, line: first + index }));
}

/** Every line of the guide, with its words. */
export function guideLines(project: Project): (Spot & { words: string })[] {
  return project.guide.flatMap((file) =>
    linesIn(project, file).map((words, index) => ({ file, line: index + 1, words })),
  );
}

/** References that a list of parts names, ranges spelled out. */
export function refsIn(value: string): string[] {
  return value.split(/, |; /).flatMap((item) => {
    const [, letters = '', from = '', , to = from] =
      /^([A-Z]{1,4})(\d+)(?:–([A-Z]{1,4})(\d+))?(?: |$)/.exec(item) ?? [];
    if (letters === '') return [];
    return Array.from({ length: Number(to) - Number(from) + 1 }, (_, index) => `${letters}${Number(from) + index}`);
  });
}

/** Items of a fact. */
export function itemsOf(value: string): string[] {
  return value.split(/, |; /);
}
