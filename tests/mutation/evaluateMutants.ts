import { readBuild } from '#app/openBuild.ts';
import type { World } from '#app/ports.ts';
import { judge } from '#checks/judge.ts';
import type { Finding } from '#core/finding.ts';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { openWorld } from '#outside/openWorld.ts';
import { readFacts } from '#prose/readFacts.ts';
import { rehearse } from '#rehearsal/rehearse.ts';
import type { Mutant, Spot } from './mutant.ts';
import { allMutants, type Chosen } from './mutantsOf.ts';
import { openProject, type Project } from './project.ts';

/** What became of one mutant. */
export interface Outcome {
  readonly mutant: Mutant;
  readonly found: readonly Finding[];
  /** Findings that halt and are not of this fault. */
  readonly others: readonly Finding[];
  /** Findings elsewhere, of any weight. */
  readonly elsewhere: readonly Finding[];
}

export { documentOf, tableOf } from './reportOf.ts';

/** The chosen mutants, or all of them. */
export async function evaluateChosen(chosen: Chosen): Promise<Outcome[]> {
  return evaluateMutants(allMutants(chosen));
}

/** Rehearses and checks every mutant as a folder in memory; nothing is written and no process started. */
export async function evaluateMutants(mutants: readonly Mutant[]): Promise<Outcome[]> {
  const cache = memoryCache();
  const world: World = { ...openWorld(), openCache: async () => cache };
  const projects = new Map<string, { project: Project; clean: ReadonlySet<string> }>();
  const outcomes: Outcome[] = [];
  for (const mutant of mutants) {
    const known = projects.get(mutant.build);
    const project = known?.project ?? openProject(mutant.build);
    const clean = known?.clean ?? new Set((await findingsIn(project.files, world)).map(signatureOf));
    projects.set(mutant.build, { project, clean });
    const findings = await findingsIn(filesOf(project, mutant), world);
    outcomes.push(
      outcomeOf(
        mutant,
        findings.filter((finding) => !clean.has(signatureOf(finding))),
      ),
    );
  }
  return outcomes;
}

function filesOf({ files }: Project, { changes }: Mutant): Map<string, string | Uint8Array> {
  const changed = new Map(files);
  for (const [file, content] of changes) {
    if (content === null) changed.delete(file);
    else changed.set(file, content);
  }
  return changed;
}

async function findingsIn(files: ReadonlyMap<string, string | Uint8Array>, world: World): Promise<Finding[]> {
  const build = await readBuild(memoryFolder(Object.fromEntries(files)), world);
  const facts = readFacts(build);
  const judged = { build, facts, ledger: rehearse(build, facts), asOf: '2026-11-25' };
  return judge(judged, { for: 'publisher' }).findings;
}

function signatureOf({ check, message }: Finding): string {
  return `${check} ${message}`;
}

function outcomeOf(mutant: Mutant, findings: readonly Finding[]): Outcome {
  const { at, reaches } = mutant.consequence;
  const found = findings.filter((finding) => standsAt(finding, at));
  const elsewhere = findings.filter((finding) => !standsAt(finding, [...at, ...reaches]));
  return { mutant, found, elsewhere, others: elsewhere.filter(({ weight }) => weight === 'halts') };
}

/** One of its witnesses is a line where the fault shows. */
function standsAt({ sides }: Finding, spots: readonly Spot[]): boolean {
  return sides.some(
    ({ place }) => place.kind === 'text' && spots.some(({ file, line }) => place.file === file && place.line === line),
  );
}
