import type { Build } from '#core/build.ts';
import type { Facts } from '#core/facts.ts';
import type { Problem } from '#core/problem.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import { findActions } from './actions/findActions.ts';
import { findHazards } from './cautions/findHazards.ts';
import { drivenPins } from './drivenPins.ts';
import { readStepFacts } from './facts/readStepFacts.ts';
import { findControllers } from './findControllers.ts';
import { knownThings } from './knownThings.ts';
import { languageOf, otherLanguage } from './language/languageOf.ts';
import { findPinMentions } from './mentions/findPinMentions.ts';
import { findValueMentions } from './mentions/findValueMentions.ts';
import { proposeFacts } from './proposals/proposeFacts.ts';
import { findOpenWaits } from './standing/findOpenWaits.ts';
import { findTemporaries } from './standing/findTemporaries.ts';
import { findTerms } from './terms/findTerms.ts';

/** What the guide's steps and its prose say, held against the build's lists, wiring and code. */
export function readFacts(build: Build): Facts {
  const known = knownThings(build);
  const steps: Record<StepId, StepFacts> = {};
  const problems: Problem[] = [];
  for (const section of build.instructions.sections) {
    if (section.role !== 'step') continue;
    const read = readStepFacts(section, known);
    steps[section.id] = read.facts;
    problems.push(...read.problems);
  }
  const controllers = findControllers(build, Object.values(steps));
  const pins = findPinMentions(build, known, controllers);
  const language = languageOf(build);
  const readsWords = otherLanguage(language) === null;
  const actions = readsWords ? findActions(build) : [];
  return {
    language,
    steps,
    controllers,
    drivenPins: drivenPins(build, controllers),
    values: findValueMentions(build, known),
    pins,
    actions,
    hazards: findHazards(build, steps, actions, readsWords),
    proposals: proposeFacts(build, known, { steps, controllers, pins, actions, readsWords }),
    terms: readsWords ? findTerms(build) : [],
    temporaries: readsWords ? findTemporaries(build) : [],
    openWaits: readsWords ? findOpenWaits(build, steps) : [],
    problems,
  };
}
