import type { Stop } from '#core/ledger.ts';
import type { Path } from '#core/place.ts';
import { remember } from '#core/remember.ts';
import { tokensOf } from '#notation/names.ts';
import { assemblyName } from './assemblyName.ts';
import type { Bench } from './bench.ts';
import { sameTool } from './sameTool.ts';
import { wordsAfter } from './wordsAfter.ts';

/** Sub-assemblies that nothing after them speaks of. What the last step makes, or the title names, is the thing itself. */
export function findUnusedAssemblies(bench: Bench): Stop[] {
  const { build, script } = bench;
  const title = new Set(tokensOf(`${build.settings.title ?? ''} ${build.instructions.title ?? ''} ${build.name}`));
  return bench.assemblies.all().flatMap(({ named, maker, claim, parts, wasUsed }): Stop[] => {
    const later = script.slice(script.findIndex(({ id }) => id === maker) + 1);
    const step = script.find(({ id }) => id === maker);
    const words = tokensOf(assemblyName(named));
    if (wasUsed || later.length === 0 || step === undefined || step.optional) return [];
    if (words.every((word) => title.has(word))) return [];
    const refs = new Set(parts.flatMap(({ ref }) => ref ?? []));
    const isTouched = later.some(
      ({ facts }) =>
        facts.connects.some(({ value }) => refs.has(value.from.ref) || refs.has(value.to.ref)) ||
        facts.uses.some(({ value }) => value.ref !== null && refs.has(value.ref)) ||
        facts.measures.some(({ value }) => value.between.some((end) => refs.has(end.split('.')[0] ?? ''))),
    );
    const said = new Set(tokensOf(wordsAfter(build, maker, 'left out')).map(singular));
    const isNamed = words.slice(-1).some((word) => said.has(singular(word)));
    return isTouched || isNamed ? [] : [{ kind: 'assembly-never-used', step: maker, claim, name: named }];
  });
}

/** Tools of the list that no step names, not even by a word that sounds alike ('strip', 'wire strippers'). */
export function findUnusedTools({ build, facts }: Bench): Stop[] {
  const named = Object.values(facts.steps).flatMap(({ tools }) => tools.map(({ value }) => value));
  const said = build.instructions.sections
    .flatMap(({ role, heading, blocks }) =>
      role === 'tools' || role === 'parts' ? [] : [heading, ...blocks.map(({ place }) => place.quote)],
    )
    .map(stemsOf);
  return build.tools.flatMap(({ name, needed }): Stop[] => {
    const isSaid = tokensOf(name).some((word) => word.length > 3 && said.some((stems) => stems.has(stemOf(word))));
    if (!needed || isSaid || named.some((tool) => sameTool(tool, name))) return [];
    return [{ kind: 'tool-never-used', step: null, claim: null, tool: name }];
  });
}

/** Programs for a controller in a guide that nowhere speaks of loading code. */
export function findUnloadedCode({ build, facts }: Pick<Bench, 'build' | 'facts'>): Stop[] {
  const steps = Object.values(facts.steps);
  const paths: Path[] = [...new Set(facts.controllers.flatMap(({ value }) => value.files))];
  const isTold = steps.some(({ loads }) => loads.length > 0) || facts.actions.some(({ kind }) => kind === 'load-code');
  if (steps.length === 0 || paths.length === 0 || isTold) return [];
  const words = build.instructions.sections.flatMap(({ heading, blocks }) => [
    heading,
    ...blocks.map(({ place }) => place.quote),
  ]);
  const spoken =
    /\b(?:code|sketch|firmware|software|program(?:me|med|ming)?|flash(?:ed|ing)?|upload(?:ed|ing)?|micropython|circuitpython)\b/i;
  if (words.some((text) => spoken.test(text) || paths.some((path) => text.includes(path)))) return [];
  return [{ kind: 'code-never-loaded', step: null, claim: null, paths }];
}

const stemsOf = remember((text): ReadonlySet<string> => new Set(tokensOf(text).map(stemOf)));

function stemOf(word: string): string {
  return word.slice(0, 5);
}

function singular(word: string): string {
  return word.length > 3 ? word.replace(/s$/, '') : word;
}
