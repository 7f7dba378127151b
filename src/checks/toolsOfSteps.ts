import type { Judged } from '#core/assembled.ts';
import type { Edit } from '#core/edit.ts';
import { rememberFor } from '#core/remember.ts';
import type { Section, StepId, WrittenFact } from '#core/step.ts';
import { addToFact } from './addToFact.ts';
import { groupedBy } from './groupedBy.ts';
import knowledge from './knowledge/tools.json';
import { holdsWord } from './listedTools.ts';
import { type Work, type WorkTool, workFor } from './workForTools.ts';

/** A step that lists its tools, with those that its words need and the list of the step lacks. */
export interface StepLacking {
  readonly step: StepId;
  readonly fact: WrittenFact;
  /** By the maker's own names. */
  readonly tools: readonly { readonly name: string; readonly work: readonly Work[] }[];
  readonly mend: Edit | null;
}

/**
 * Steps whose `Tools:` leave out what their own words work with, where the maker has that tool and would name it: it
 * is named in no earlier step, or the steps list tools again and most that do the same work name it.
 */
export function toolsLackingInSteps(judged: Judged): StepLacking[] {
  const steps = judged.build.instructions.sections.filter(({ role }) => role === 'step');
  const works = knowledge.tools.filter(isCertain).map((entry) => {
    const work = groupedBy(workOf(judged, entry), ({ step }) => step ?? '');
    return { entry, work, name: work.size === 0 ? null : nameOf(judged, entry) };
  });
  const working = steps.filter(({ id }) => works.some(({ work }) => work.has(id)));
  if (working.filter(listsTools).length * 2 < working.length) return [];
  return working.filter(listsTools).flatMap((section): StepLacking[] => {
    const fact = section.facts.filter(({ label }) => label === 'tools').at(-1);
    const tools = works.flatMap(({ entry, work, name }) => {
      const own = work.get(section.id) ?? [];
      const isMissing =
        own.length > 0 && name !== null && !isThere(judged, section, entry) && wouldList(judged, section, entry, work);
      return isMissing ? [{ name, work: own }] : [];
    });
    if (fact === undefined || tools.length === 0) return [];
    const mend = addToFact(
      judged.build,
      fact,
      tools.map(({ name }) => name),
      'Lists the tools that the step works with.',
    );
    return [{ step: section.id, fact, tools, mend }];
  });
}

/** Work that no hand and no other thing does; cutting, taping and glueing leave it open with what. */
function isCertain({ work }: WorkTool): boolean {
  return work.some((kind) => certain.has(kind));
}

const certain = new Set([
  'solder',
  'desolder',
  'crimp',
  'strip',
  'drill',
  'saw',
  'screw',
  'measure',
  'sew',
  'heat-set',
]);

/** What is done only at need, or was done before, asks for no tool. */
function workOf(judged: Judged, entry: WorkTool): Work[] {
  return workFor(judged, entry).filter(
    ({ words }) =>
      !/^\W*(?:if|when|where|should|unless|once|after|before)\b/i.test(words) && !isOtherReading(words, entry),
  );
}

/** A reading that no meter gives, such as a length or a weight. */
function isOtherReading(words: string, { work }: WorkTool): boolean {
  return (
    work.includes('measure') && words.startsWith('Measure: ') && !/\d\s*[kMmµu]?(?:Ω|Ω|ohms?\b|V\b|A\b)/iu.test(words)
  );
}

function listsTools({ facts }: Section): boolean {
  return facts.some(({ label }) => label === 'tools');
}

/** The maker's tool that does the work, the best one first, without what follows its name; null where there is none. */
function nameOf({ build, facts }: Judged, { known }: WorkTool): string | null {
  const declared = Object.values(facts.steps).flatMap(({ tools }) => tools.map(({ value }) => value));
  const names = [...new Set([...declared, ...build.tools.map(({ name }) => name)])];
  const own = known
    .map((word) => names.find((name) => holdsWord(name.toLowerCase(), [word])))
    .find((name) => name !== undefined);
  if (own === undefined) return null;
  const plain = (own.split(/[,;([:]|\s[-–—]\s/)[0] ?? own).trim();
  return plain.replace(/^\p{Lu}(?=\p{Ll}+(?!\p{L}))/u, (letter) => letter.toLowerCase());
}

/** What tells of the tools that a step has at hand. */
interface AtHand {
  /** Tools and parts of the step, in lower case. */
  readonly words: string;
  readonly shrinksTube: boolean;
}

const toolsAtHand = rememberFor(({ build, facts }: Judged): ReadonlyMap<StepId, AtHand> => {
  const parts = groupedBy(build.parts, ({ id }) => id);
  const shrinking = new Set(facts.actions.filter(({ kind }) => kind === 'heat-shrink').map(({ step }) => step));
  return new Map(
    build.instructions.sections.map(({ id, facts: written }) => {
      const used = new Set((facts.steps[id]?.uses ?? []).map(({ value }) => value.part ?? ''));
      const words = [
        ...(facts.steps[id]?.tools ?? []).map(({ value }) => value),
        ...written.flatMap(({ label, value }) => (label === 'tools' || label === 'parts' ? [value] : [])),
        ...[...used].flatMap((part) => (parts.get(part) ?? []).map(({ description }) => description)),
      ];
      return [id, { words: words.join('\n').toLowerCase(), shrinksTube: shrinking.has(id) }];
    }),
  );
});

/** Whether the step lists such a tool, or has a part that serves, such as a cable. */
function isThere(judged: Judged, { id }: Section, { known, work }: WorkTool): boolean {
  const { words, shrinksTube } = toolsAtHand(judged).get(id) ?? { words: '', shrinksTube: false };
  // Hot air may solder; where the step shrinks tube with it, it does not tell of an iron.
  const telling = shrinksTube && work.includes('solder') ? known.filter((word) => !/^hot.air$/.test(word)) : known;
  return holdsWord(words, telling);
}

function wouldList(
  judged: Judged,
  section: Section,
  entry: WorkTool,
  work: ReadonlyMap<StepId, readonly Work[]>,
): boolean {
  const steps = judged.build.instructions.sections.filter(({ role }) => role === 'step');
  const lists = (one: Section) => isThere(judged, one, entry);
  if (!steps.slice(0, steps.indexOf(section)).some(lists)) return true;
  const alike = steps.filter((one) => one !== section && listsTools(one) && work.has(one.id));
  return listsAgain(judged) && alike.filter(lists).length * 2 > alike.length;
}

/** Whether steps list a tool again that an earlier one has listed. */
function listsAgain({ facts }: Judged): boolean {
  const all = Object.values(facts.steps).flatMap(({ tools }) => [...new Set(tools.map(({ value }) => value))]);
  return new Set(all).size < all.length;
}
