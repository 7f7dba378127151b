import { Failure } from '#core/failure.ts';
import type { Impact, ImpactItem } from '#editions/impactOf.ts';
import { editSetting } from '#formats/settings/readSettings.ts';
import { changeText } from './changeText.ts';
import { check, type Judgement } from './check.ts';
import { settingsFile } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';

/** What is left to look at after changes, and what was ticked off now. */
export interface ImpactReport {
  readonly impact: readonly Impact[];
  readonly ticked: readonly ImpactItem[];
  readonly judgement: Judgement;
}

/** Which items to tick off: numbers in the list of open ones, ids, or all of them. */
export type Ticks = readonly string[] | 'all';

/**
 * What else is older than each change, or now disagrees. `ticks` are noted in `twicebuilt.yaml` as looked at. Throws
 * `Failure` in a folder that was not adopted: nothing is known there of earlier states.
 */
export async function impact(folder: FolderPort, world: World, ticks: Ticks = []): Promise<ImpactReport> {
  const judgement = await check(folder, world);
  if (!judgement.judged.build.adopted) {
    throw new Failure(
      'bad-request',
      'What changed is only known in a folder that was adopted: the tool keeps no record of others.',
      'Run `twicebuilt adopt DIR` first; from then on changes are noted in history.jsonl.',
    );
  }
  const open = openItems(judgement.impact);
  const ticked = ticks === 'all' ? open : ticks.map((tick) => itemMeant(tick, open));
  if (ticked.length === 0) return { impact: judgement.impact, ticked, judgement };
  await changeText(
    folder,
    settingsFile,
    ticked.map(
      ({ id }) =>
        (source) =>
          editSetting(source, ['impactDone', '-'], id),
    ),
  );
  const after = await check(folder, world);
  return { impact: after.impact, ticked, judgement: after };
}

/** Everything that is still to be looked at, in the order of the list. */
export function openItems(impacts: readonly Impact[]): ImpactItem[] {
  return impacts.flatMap(({ items }) => items.filter(({ done }) => !done));
}

function itemMeant(tick: string, open: readonly ImpactItem[]): ImpactItem {
  const item = /^\d+$/.test(tick) ? open[Number(tick) - 1] : open.find(({ id }) => id === tick);
  if (item !== undefined) return item;
  throw new Failure(
    'bad-request',
    open.length === 0
      ? `Nothing is left to look at, so “${tick}” names no item.`
      : `Expected a number from the list (1 to ${open.length}) or the name of an item; found “${tick}”.`,
    'Run `twicebuilt impact DIR` to see the list.',
  );
}
