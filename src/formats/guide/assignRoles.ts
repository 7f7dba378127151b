import type { Section } from '#core/step.ts';
import { nameOfSection, type SectionName } from './nameOfSection.ts';
import { tellingOfHeading } from './stepWording.ts';

/** What a section shows of itself before it has a role. */
export interface Outline {
  readonly heading: string;
  readonly depth: number;
  /** Index of the section above it; null at the top. */
  readonly parent: number | null;
  readonly pictures: number;
  /** Sentences that tell somebody to do something. */
  readonly told: number;
  /** True where its first list is a list of facts; `work` where one of them is more than a caution. */
  readonly facts: 'none' | 'cautions' | 'work';
}

type Role = Section['role'];

/** Evidence of this much makes a step on its own; less only counts between two such steps. */
const enough = 2;

/**
 * What part each section plays. Steps stand at one depth: the given one, else the depth whose sections bear the
 * most signs of being steps (facts, numbers, a heading such as 'Assembly' above, telling words, pictures).
 */
export function assignRoles(outlines: readonly Outline[], stepDepth: number | null): Role[] {
  const names = outlines.map(({ heading, depth }) => (depth === 0 ? 'prose' : nameOfSection(heading)));
  const evidence = outlines.map((_, index) => evidenceOf(index, outlines, names));
  const depth = stepDepth ?? likeliestDepth(outlines, evidence);
  const roles = outlines.map((outline, index): Role => {
    const weight = evidence[index] ?? null;
    if (weight !== null && outline.facts === 'work') return 'step';
    if (weight !== null && outline.depth === depth) {
      if (stepDepth !== null || weight >= enough) return 'step';
      if (weight > 0 && isBetween(index, outlines, evidence, depth)) return 'step';
    }
    const name = names[index];
    return name === 'parts' || name === 'tools' ? name : 'prose';
  });
  return withTitle(outlines, roles);
}

/** Null for what cannot be a step: a section that is named otherwise, or lies in one that is. */
function evidenceOf(
  index: number,
  outlines: readonly Outline[],
  names: readonly (SectionName | null)[],
): number | null {
  const outline = outlines[index];
  const name = names[index] ?? null;
  if (outline === undefined || outline.depth === 0 || name === 'parts' || name === 'tools') return null;
  const above = nearestName(outline.parent, outlines, names);
  const isNamedOtherwise = name === 'prose' || (name === null && above !== null && above !== 'steps');
  const isNumberedStep = numberedStep.test(outline.heading);
  if (isNamedOtherwise && outline.facts !== 'work' && !isNumberedStep) return null;
  const own = (outline.pictures > 0 ? 1 : 0) + (outline.told >= 3 ? 2 : outline.told > 0 ? 1 : 0);
  // A heading that gathers steps is one itself only for what it says before them.
  if (name === 'steps' && outlines.some(({ parent }) => parent === index)) return own;
  const telling = tellingOfHeading(outline.heading);
  return (
    (outline.facts === 'none' ? 0 : 4) +
    (isNumberedStep ? 3 : 0) +
    (name === 'steps' || above === 'steps' ? 2 : 0) +
    (telling === 'yes' ? 2 : telling === 'maybe' ? 1 : 0) +
    own
  );
}

const numberedStep = /^\s*(?:step|schritt|étape|paso)\s+\d/iu;

function nearestName(
  from: number | null,
  outlines: readonly Outline[],
  names: readonly (SectionName | null)[],
): SectionName | null {
  for (let at = from; at !== null; at = outlines[at]?.parent ?? null) {
    const name = names[at] ?? null;
    if (name !== null) return name;
  }
  return null;
}

/** Lists of facts decide where there are any; else the sum of evidence. The shallower depth wins a draw. */
function likeliestDepth(outlines: readonly Outline[], evidence: readonly (number | null)[]): number | null {
  const withFacts = outlines.some(({ facts }, index) => facts === 'work' && evidence[index] !== null);
  let best: { depth: number; weight: number } | null = null;
  for (let depth = 1; depth <= 6; depth++) {
    let weight = 0;
    for (const [index, outline] of outlines.entries()) {
      const own = evidence[index] ?? 0;
      if (outline.depth !== depth || own < enough) continue;
      weight += withFacts ? Number(outline.facts === 'work') : own;
    }
    if (weight > (best?.weight ?? 0)) best = { depth, weight };
  }
  return best?.depth ?? null;
}

/** A section with little evidence is a step where its neighbours on both sides, under the same heading, are. */
function isBetween(
  index: number,
  outlines: readonly Outline[],
  evidence: readonly (number | null)[],
  depth: number,
): boolean {
  const parent = outlines[index]?.parent;
  const isStrong = (outline: Outline, at: number) =>
    outline.depth === depth && outline.parent === parent && (evidence[at] ?? 0) >= enough;
  const strong = outlines.flatMap((outline, at) => (isStrong(outline, at) ? [at] : []));
  return (strong[0] ?? index) < index && (strong.at(-1) ?? index) > index;
}

/** The first heading of depth 1 is the title, unless headings of depth 1 are the steps. */
function withTitle(outlines: readonly Outline[], roles: readonly Role[]): Role[] {
  const first = outlines.findIndex(({ depth }) => depth === 1);
  const stepsThere = outlines.filter(({ depth }, index) => depth === 1 && roles[index] === 'step').length;
  return roles.map((role, index) => (index === first && (role !== 'step' || stepsThere < 2) ? 'title' : role));
}
