import type { Outcome } from './evaluateMutants.ts';
import type { Spot } from './mutant.ts';

/** The share of faults that are found, and other findings that halt, one mutant with another. */
export function figuresOf(outcomes: readonly Outcome[]): {
  mutants: number;
  found: number;
  share: number;
  others: number;
} {
  const found = outcomes.filter((outcome) => outcome.found.length > 0).length;
  const others = outcomes.reduce((sum, outcome) => sum + outcome.others.length, 0);
  return { mutants: outcomes.length, found, share: found / outcomes.length, others: others / outcomes.length };
}

/** A table for the terminal: operators by row, builds by column, then what was missed. */
export function tableOf(outcomes: readonly Outcome[]): string {
  const builds = [...new Set(outcomes.map(({ mutant }) => mutant.build))];
  const operators = [...new Set(outcomes.map(({ mutant }) => mutant.operator))];
  const row = (title: string, of: (outcome: Outcome) => boolean) => {
    const cells = builds.map((build) => {
      const here = outcomes.filter((outcome) => of(outcome) && outcome.mutant.build === build);
      return here.length === 0 ? '' : `${figuresOf(here).found}/${here.length}`;
    });
    const all = figuresOf(outcomes.filter(of));
    return [
      title.padEnd(30),
      ...cells.map((cell) => cell.padStart(8)),
      `${all.found}/${all.mutants}`.padStart(10),
    ].join('');
  };
  const all = figuresOf(outcomes);
  const missed = outcomes.filter(({ found }) => found.length === 0);
  return [
    [''.padEnd(30), ...builds.map((build) => build.slice(0, 7).padStart(8)), 'all'.padStart(10)].join(''),
    ...operators.map((operator) => row(operator, ({ mutant }) => mutant.operator === operator)),
    row('all', () => true),
    '',
    `Found: ${all.found} of ${all.mutants} (${(all.share * 100).toFixed(1)} %).`,
    `Other findings that halt: ${all.others.toFixed(3)} a mutant.`,
    ...(missed.length === 0 ? [] : ['', 'Missed:']),
    ...missed.map(
      ({ mutant }) => `  ${mutant.id}: ${mutant.title} (${mutant.consequence.at.slice(0, 3).map(spotOf).join(', ')})`,
    ),
    ...othersOf(outcomes),
    '',
  ].join('\n');
}

/** The same for machines. */
export function documentOf(outcomes: readonly Outcome[]) {
  return {
    figures: figuresOf(outcomes),
    mutants: outcomes.map(({ mutant, found, others }) => ({
      id: mutant.id,
      title: mutant.title,
      why: mutant.consequence.why,
      expectedAt: mutant.consequence.at.map(spotOf),
      foundBy: [...new Set(found.map(({ check }) => check))],
      otherHalts: others.map(({ check, message }) => `${check}: ${message}`),
    })),
  };
}

function othersOf(outcomes: readonly Outcome[]): string[] {
  const lines = outcomes.flatMap(({ mutant, others }) =>
    others.map(({ check, message }) => `  ${mutant.id}: ${check}: ${message}`),
  );
  return lines.length === 0 ? [] : ['', 'Other findings that halt:', ...lines];
}

function spotOf({ file, line }: Spot): string {
  return `${file}:${line}`;
}
