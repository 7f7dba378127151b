import { rehearsalChecks } from '#checks/judge.ts';
import { Failure } from '#core/failure.ts';
import { renderLedger } from '#render/ledger/renderLedger.ts';
import type { Judgement } from './check.ts';
import type { World } from './ports.ts';
import { withholdWords, wordsToWithhold } from './withholdWords.ts';

/** What a page of ours is recognised by. */
const ownMark = 'content="twicebuilt rehearse"';

/**
 * Writes the account of a rehearsal to `file` as one page and returns its whole path. Refuses to write among the
 * maker's own files, and over a file that is no such page.
 */
export async function writeRehearsalPage(
  judgement: Judgement,
  root: string,
  file: string,
  world: World,
): Promise<string> {
  const path = await world.absolute(file);
  if (path.startsWith(`${root}/`) && !path.startsWith(`${root}/out/`)) {
    throw new Failure(
      'bad-request',
      `${path} lies among the files of the build; the page would mix with them.`,
      'Name a file outside the build, or in its folder out/.',
    );
  }
  const at = path.lastIndexOf('/');
  const output = await world.openOutput(path.slice(0, at) || '/');
  const name = path.slice(at + 1);
  if (await output.exists(name)) {
    const head = new TextDecoder().decode(await output.readHead(name, 1000));
    if (!head.includes(ownMark)) {
      throw new Failure(
        'output-not-ours',
        `${path} is there already and is no page of a rehearsal.`,
        'Name another file.',
      );
    }
  }
  await output.write(name, new TextEncoder().encode(rehearsalPage(judgement)));
  return path;
}

/** The page itself, credentials withheld. */
export function rehearsalPage({ judged, findings, verdict }: Judgement): string {
  const ofRehearsal = findings.filter(({ check }) => rehearsalChecks.has(check));
  const page = renderLedger(judged, ofRehearsal, verdict);
  return withholdWords(page, wordsToWithhold(judged.build.secrets, judged.build.texts));
}
