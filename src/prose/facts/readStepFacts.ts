import { type Claim, declared } from '#core/claim.ts';
import type { Problem } from '#core/problem.ts';
import {
  type FactLabel,
  type Hazard,
  type Section,
  type SignalWord,
  type StepFacts,
  signalWords,
  type WrittenFact,
} from '#core/step.ts';
import type { KnownThings } from '../knownThings.ts';
import { itemsOf, joinReadings, plainMessage, type Reading } from './reading.ts';
import { readConnects, readRemoves } from './readJoins.ts';
import { readLoads } from './readLoads.ts';
import { readMeasures } from './readMeasures.ts';
import { readMinutes } from './readMinutes.ts';
import { readPower } from './readPower.ts';
import { readTools } from './readTools.ts';
import { readUses } from './readUses.ts';

/** What a step declares of itself, resolved against the build's lists. */
export function readStepFacts(section: Section, known: KnownThings): { facts: StepFacts; problems: Problem[] } {
  const problems: Problem[] = section.facts.filter(({ value }) => value === '').map(emptyFact);
  const all = <T>(label: FactLabel, read: (fact: WrittenFact) => Reading<T>): readonly Claim<T>[] => {
    const written = section.facts.filter((fact) => fact.label === label && fact.value !== '' && !saysNothing(fact));
    const reading = joinReadings(written.map(read));
    problems.push(...reading.problems);
    return reading.claims;
  };
  const one = <T>(label: FactLabel, read: (fact: WrittenFact) => Reading<T>): Claim<T> | null => {
    const [first, ...more] = all(label, read);
    problems.push(...more.flatMap((claim) => repeated(label, claim)));
    return first ?? null;
  };
  const facts: StepFacts = {
    uses: all('parts', (fact) => readUses(fact, known)),
    tools: all('tools', (fact) => readTools(fact, known)),
    makes: all('makes', readNames),
    connects: all('connects', (fact) => readConnects(fact, known)),
    removes: all('removes', (fact) => readRemoves(fact, known)),
    loads: all('code', (fact) => readLoads(fact, known)),
    power: one('power', readPower),
    hazards: hazardsOf(section.facts),
    measures: all('measure', readMeasures),
    expects: all('expect', readWords),
    minutes: one('time', readMinutes),
    side: one('side', readWords),
    optional: one('optional', readWords),
    variant: one('variant', readWords),
    irreversible: one('irreversible', readWords),
  };
  return { facts, problems };
}

/** 'Tools: none' says that there is nothing to say. */
function saysNothing({ value }: WrittenFact): boolean {
  return /^(?:none|nothing|no|n\/?a|keine?|nichts|aucune?|rien|ninguno|ninguna|nada|[-–—/])\.?$/i.test(value.trim());
}

function readWords(fact: WrittenFact): Reading<string> {
  return { claims: [declared(plainMessage(fact.value), fact.place)], problems: [] };
}

function readNames(fact: WrittenFact): Reading<string> {
  return { claims: itemsOf(fact).map(({ text, place }) => declared(text, place)), problems: [] };
}

/** In the order written, whichever signal word they carry. */
function hazardsOf(facts: readonly WrittenFact[]): Claim<Hazard>[] {
  return facts.flatMap((fact) => {
    const word = fact.label;
    return isSignalWord(word) && fact.value !== ''
      ? [declared({ word, message: plainMessage(fact.value) }, fact.place)]
      : [];
  });
}

function isSignalWord(label: FactLabel): label is SignalWord {
  return (signalWords as readonly FactLabel[]).includes(label);
}

function emptyFact({ label, place }: WrittenFact): Problem {
  return {
    place,
    message: `Nothing stands after the label '${label}'; expected its value on the same line.`,
    remedy: 'Write the value after the colon, or remove the item.',
  };
}

function repeated(label: FactLabel, claim: Claim<unknown>): Problem[] {
  return claim.places.map((place) => ({
    place,
    message: `This step states '${label}' more than once; the first statement counts.`,
    remedy: 'Keep one of them.',
  }));
}
