import { type Draft, type Mutant, mutantFrom } from './mutant.ts';
import { operators } from './operators.ts';
import { mutatedBuilds, openProject } from './project.ts';

/** No operator gives more mutants of one build, so that no kind of fault outweighs the others. */
const most = 4;

/** Which mutants are asked for. */
export interface Chosen {
  readonly build?: string | undefined;
  /** By its name, with hyphens for blanks. */
  readonly operator?: string | undefined;
}

/** Every operator on every build, always the same mutants. */
export function allMutants({ build, operator }: Chosen = {}): Mutant[] {
  return mutatedBuilds
    .filter((name) => build === undefined || name === build)
    .flatMap((name) => {
      const project = openProject(name);
      return Object.entries(operators)
        .filter(([one]) => operator === undefined || one.replaceAll(' ', '-') === operator)
        .flatMap(([one, apply]) =>
          spread(apply(project)).map((draft, index) => mutantFrom(project, one, draft, index + 1)),
        );
    });
}

/** A few, evenly over all that an operator gives. */
function spread(drafts: readonly Draft[]): Draft[] {
  if (drafts.length <= most) return [...drafts];
  return Array.from({ length: most }, (_, index) => drafts[Math.floor((index * drafts.length) / most)]).flatMap(
    (draft) => draft ?? [],
  );
}
