import type { Build } from '#core/build.ts';
import type { Edit } from '#core/edit.ts';
import { Failure } from '#core/failure.ts';
import type { Path } from '#core/place.ts';
import { type Proposal, proposalId } from '#core/proposal.ts';
import { type Encoding, lineStartsOf, type SourceText } from '#core/sourceText.ts';
import type { Section, StepFacts } from '#core/step.ts';
import { spliceText } from '#formats/edit/applyEdit.ts';
import { editFacts, type NewFact } from '#formats/guide/editFacts.ts';
import { editSetting, readSettings } from '#formats/settings/readSettings.ts';
import { readFacts } from '#prose/readFacts.ts';
import { changeText } from './changeText.ts';
import { check, type Judgement } from './check.ts';
import { filesOfRole } from './filesOfRole.ts';
import { settingsFile } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';
import { readInstructions } from './readInstructions.ts';

/** Below this confidence a proposal is only confirmed by name. */
export const sureEnough = 0.6;

/** A change of one text, with the text that it was made on. */
export interface TextEdit {
  readonly source: SourceText;
  readonly edit: Edit;
}

/** What confirming would write, before anything is written. */
export interface ConfirmPlan {
  readonly confirmed: readonly Proposal[];
  /** Those that would not be read back from the text as what they say. */
  readonly refused: readonly Proposal[];
  readonly edits: readonly TextEdit[];
}

/** What was written, and how the build stands now. */
export interface Confirming extends Omit<ConfirmPlan, 'edits'> {
  readonly declined: readonly Proposal[];
  readonly written: readonly Path[];
  readonly judgement: Judgement;
}

/** The proposals put to the maker, in reading order and within a step the surest first. */
export function offered({ judged }: Judgement): Proposal[] {
  const order = new Map(judged.build.instructions.sections.map(({ id }, index) => [id, index]));
  return judged.facts.proposals
    .filter(({ again }) => !again)
    .sort((a, b) => (order.get(a.step) ?? 0) - (order.get(b.step) ?? 0) || b.confidence - a.confidence);
}

/**
 * The proposals that words name: numbers of the list, ranges such as 3-7, names of proposals, or steps by their name
 * or heading. Throws `Failure` for a word that names none.
 */
export function proposalsNamed(judgement: Judgement, words: readonly string[]): Proposal[] {
  const all = offered(judgement);
  const { sections } = judgement.judged.build.instructions;
  const meant = words.flatMap((written) => {
    const word = written.trim();
    const [, first, last = first] = /^(\d+)(?:[-–](\d+))?$/.exec(word) ?? [];
    const named =
      first !== undefined
        ? all.slice(Math.max(0, Number(first) - 1), Number(last))
        : all.filter((proposal) => proposalId(proposal) === word || isStep(proposal.step, word, sections));
    if (named.length > 0 && first !== '0') return named;
    throw new Failure(
      'bad-request',
      all.length === 0
        ? `There is nothing to confirm, so “${word}” names no proposal.`
        : `Expected a proposal by its number (1 to ${all.length}), or a step by its heading; found “${word}”.`,
      'Run `twicebuilt confirm DIR` to see the list; numbers change once something is confirmed.',
    );
  });
  return all.filter((proposal) => meant.includes(proposal));
}

function isStep(id: string, word: string, sections: readonly Section[]): boolean {
  return id === word || sections.some((one) => one.id === id && one.heading.toLowerCase() === word.toLowerCase());
}

/** Works out what confirming would write, and that it would be read back as what it says. */
export function planConfirming({ judged }: Judgement, chosen: readonly Proposal[]): ConfirmPlan {
  let confirmed = [...chosen];
  const refused: Proposal[] = [];
  for (;;) {
    const edits = editsFor(judged.build, confirmed);
    const readBack = factsAfter(judged.build, edits);
    const lost = confirmed.filter((proposal) => !isDeclared(proposal, readBack[proposal.step]));
    if (lost.length === 0) return { confirmed, refused, edits };
    refused.push(...lost);
    confirmed = confirmed.filter((proposal) => !lost.includes(proposal));
  }
}

/**
 * Writes the chosen proposals into the guide as labelled facts, and notes in `twicebuilt.yaml` which the maker does not
 * want. Throws `Failure` in a folder that was not adopted, and where a file has changed meanwhile; then nothing of that
 * file is written.
 */
export async function confirmProposals(
  folder: FolderPort,
  world: World,
  judgement: Judgement,
  wish: { readonly confirm: readonly Proposal[]; readonly decline: readonly Proposal[] },
): Promise<Confirming> {
  needsAdoption(judgement);
  const plan = planConfirming(judgement, wish.confirm);
  const written: Path[] = [];
  for (const { source, edit } of plan.edits) {
    await changeText(folder, source.file, [(now) => unchanged(now, source, edit)]);
    written.push(source.file);
  }
  const declined = wish.decline.filter((proposal) => !plan.confirmed.includes(proposal));
  if (declined.length > 0) {
    const isNew = (now: SourceText, id: string) => !readSettings(now).settings.declined.includes(id);
    const ids = declined.map(proposalId);
    await changeText(
      folder,
      settingsFile,
      ids.map((id) => (now) => (isNew(now, id) ? editSetting(now, ['declined', '-'], id) : null)),
    );
    written.push(settingsFile);
  }
  const { confirmed, refused } = plan;
  const after = written.length === 0 ? judgement : await check(folder, world);
  return { confirmed, refused, declined, written, judgement: after };
}

function unchanged(now: SourceText, source: SourceText, edit: Edit): Edit {
  if (now.hash === source.hash) return edit;
  throw new Failure(
    'bad-request',
    `${source.file} has changed since its proposals were made.`,
    'Nothing was written into it. Run the command again to see the proposals for the file as it is now.',
  );
}

/** One edit for each file: below the facts that a step has, or as a new list under its heading. */
function editsFor({ instructions, texts }: Build, chosen: readonly Proposal[]): TextEdit[] {
  const edits = new Map<Path, TextEdit>();
  for (const section of instructions.sections) {
    const source = texts.get(section.file);
    const facts = factsOf(chosen.filter(({ step }) => step === section.id)).map(inEncoding(source?.encoding));
    if (facts.length === 0 || source === undefined) continue;
    const { changes } = editFacts(source, section, facts);
    const before = edits.get(source.file)?.edit.changes ?? [];
    const why = 'Declare what the maker has confirmed';
    const all = [...before, ...changes].sort((a, b) => a.span[0] - b.span[0]);
    edits.set(source.file, { source, edit: { file: source.file, base: source.hash, changes: all, why } });
  }
  return [...edits.values()];
}

/** Arrows are written with two signs where the file's encoding has no sign for them. */
function inEncoding(encoding: Encoding | undefined): (fact: NewFact) => NewFact {
  return (fact) => (encoding === 'windows-1252' ? { ...fact, value: fact.value.replaceAll('→', '->') } : fact);
}

/** Labels of which one line holds several items. */
const lists = ['parts', 'tools', 'connects', 'code'] as const;

function factsOf(proposals: readonly Proposal[]): NewFact[] {
  const joined = lists.flatMap((label): NewFact[] => {
    const items = proposals.filter((proposal) => proposal.label === label).map(({ item }) => item);
    return items.length === 0 ? [] : [{ label, value: [...new Set(items)].join(', ') }];
  });
  const single = proposals.filter(({ label }) => !(lists as readonly string[]).includes(label));
  return [...joined, ...single.map(({ label, item }): NewFact => ({ label, value: item }))];
}

/** What the steps would declare once the edits are made. */
function factsAfter(build: Build, edits: readonly TextEdit[]): Readonly<Record<string, StepFacts>> {
  const texts = new Map(build.texts);
  for (const { source, edit } of edits) {
    const text = spliceText(source.text, edit.changes);
    texts.set(source.file, { ...source, text, hash: '', lineStarts: lineStartsOf(text) });
  }
  const guide = filesOfRole(build.roles, 'guide', build.files).flatMap((path) => texts.get(path) ?? []);
  const { instructions } = readInstructions(guide, build.files);
  return readFacts({ ...build, instructions, texts }).steps;
}

function isDeclared({ label, about, item }: Proposal, facts: StepFacts | undefined): boolean {
  if (facts === undefined) return false;
  switch (label) {
    case 'parts':
      return facts.uses.some(({ value }) => `part:${value.part}` === about);
    case 'tools':
      return facts.tools.some(({ value }) => value === item || `tool:${value}` === about);
    case 'connects':
      return facts.connects.some(({ value }) => about === null || `connection:${value.connection}` === about);
    case 'code':
      return facts.loads.some(({ value }) => value.exists);
    case 'power':
      return facts.power !== null;
    case 'time':
      return facts.minutes !== null;
    default:
      return false;
  }
}

function needsAdoption({ judged }: Judgement): void {
  if (judged.build.adopted) return;
  throw new Failure(
    'bad-request',
    `Confirming writes into the guide, and this folder was not adopted, so its files are left as they are.`,
    'Run `twicebuilt adopt DIR` first; it adds a settings file and leaves all others as they are. --show gives the lines without writing.',
  );
}
