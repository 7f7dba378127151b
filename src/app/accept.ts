import { digestsOf, reasonInWords } from '#checks/acceptance.ts';
import { type FindingGroup, groupFindings } from '#checks/groupFindings.ts';
import { Failure } from '#core/failure.ts';
import type { Audience, Finding } from '#core/finding.ts';
import { editSetting, readSettings, removeEntry } from '#formats/settings/readSettings.ts';
import { changeText, type TextChange } from './changeText.ts';
import { check, type Judgement } from './check.ts';
import { settingsFile } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';

/** What was accepted, or taken back, and how the build stands now. */
export interface Accepting {
  readonly accepted: readonly { readonly finding: Finding; readonly reason: string }[];
  readonly takenBack: readonly string[];
  readonly judgement: Judgement;
}

export interface AcceptOptions {
  /** A stock reason or words of the maker's own. */
  readonly reason: string;
  readonly for?: Audience;
}

/**
 * Notes in `twicebuilt.yaml` that the maker lives with findings: `which` are their numbers in the list that `check`
 * shows, or their names. They stay quiet until a side says something else.
 */
export async function acceptFindings(
  folder: FolderPort,
  world: World,
  which: readonly string[],
  options: AcceptOptions,
): Promise<Accepting> {
  const before = await check(folder, world, options);
  needsAdoption(before);
  const findings = findingsNamed(before.findings, which);
  await changeText(
    folder,
    settingsFile,
    findings.map((finding) => acceptance(finding, options.reason)),
  );
  return {
    accepted: findings.map((finding) => ({ finding, reason: reasonInWords(options.reason) })),
    takenBack: [],
    judgement: await check(folder, world, options),
  };
}

/** Takes acceptances back, by the names of their findings. */
export async function takeBackAcceptances(
  folder: FolderPort,
  world: World,
  names: readonly string[],
  options: { readonly for?: Audience } = {},
): Promise<Accepting> {
  const before = await check(folder, world, options);
  needsAdoption(before);
  const { accepted } = before.judged.build.settings;
  const unknown = names.find((name) => !accepted.some(({ finding }) => finding === name));
  if (unknown !== undefined) {
    throw new Failure(
      'bad-request',
      `No finding “${unknown}” was accepted here.`,
      accepted.length === 0
        ? 'Nothing is accepted in this folder.'
        : `Accepted are: ${accepted.map(({ finding }) => finding).join(', ')}.`,
    );
  }
  await changeText(
    folder,
    settingsFile,
    names.map((name) => removal(name)),
  );
  return { accepted: [], takenBack: names, judgement: await check(folder, world, options) };
}

function acceptance(finding: Finding, reason: string): TextChange {
  return (source) => {
    const { accepted } = readSettings(source).settings;
    const before = accepted.findIndex((one) => one.finding === finding.id);
    const value = { finding: finding.id, reason, digests: digestsOf(finding) };
    return editSetting(source, ['accepted', before < 0 ? '-' : String(before)], value);
  };
}

function removal(name: string): TextChange {
  return (source) => {
    const index = readSettings(source).settings.accepted.findIndex(({ finding }) => finding === name);
    return index < 0 ? null : removeEntry(source, 'accepted', index);
  };
}

/** Findings by the number of their group, by name, or by the beginning of a name that fits no other. */
function findingsNamed(findings: readonly Finding[], which: readonly string[]): Finding[] {
  const groups = groupFindings(findings);
  const named = which.flatMap((word) => {
    const meant = findingsMeant(word, findings, groups);
    if (meant.length > 0) return meant;
    throw new Failure(
      'bad-request',
      `Expected a finding by its number (1 to ${groups.length}) or by its name; found “${word}”.`,
      'See `twicebuilt check DIR --all` for the list; findings that are accepted already are not on it.',
    );
  });
  return [...new Set(named)];
}

function findingsMeant(
  word: string,
  findings: readonly Finding[],
  groups: readonly FindingGroup[],
): readonly Finding[] {
  if (/^\d+$/.test(word)) return groups[Number(word) - 1]?.findings ?? [];
  const exact = findings.filter(({ id }) => id === word);
  const fitting = exact.length > 0 ? exact : findings.filter(({ id }) => id.startsWith(word));
  return fitting.length === 1 ? fitting : [];
}

function needsAdoption({ judged }: Judgement): void {
  if (judged.build.adopted) return;
  throw new Failure(
    'bad-request',
    `What you accept is kept in ${settingsFile}, and this folder has none yet.`,
    'Run `twicebuilt adopt DIR` first; it writes that file and leaves all others as they are.',
  );
}
