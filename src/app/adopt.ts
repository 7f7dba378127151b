import type { RoleProposal } from '#formats/roles/proposeRoles.ts';
import { formatSettings } from '#formats/settings/readSettings.ts';
import { filesOfRole } from './filesOfRole.ts';
import { openBuild, settingsFile } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';
import { recordHistory } from './recordHistory.ts';

/** What adopting a folder found and wrote. */
export interface Adoption extends RoleProposal {
  /** Pictures that carry a position, and credentials in texts: what would leak if the folder were shared. */
  readonly leaks: { readonly positions: number; readonly secrets: number };
  /** Files written: none where the folder was adopted before. */
  readonly written: readonly string[];
  readonly leftOut: readonly { readonly path: string; readonly why: string }[];
}

/**
 * Makes a folder a build folder, in place: writes `twicebuilt.yaml` with the roles found and the first lines of
 * `history.jsonl`, and nothing else. In a folder that was adopted before nothing is overwritten.
 */
export async function adopt(folder: FolderPort, world: World): Promise<Adoption> {
  const open = await openBuild(folder, world, { shots: 'all' });
  try {
    const { build, proposal, listing } = open;
    const written: string[] = [];
    if (!build.adopted) {
      const title = build.settings.title ?? build.instructions.title;
      const text = formatSettings({ title, roles: proposal.roles });
      await folder.write(settingsFile, new TextEncoder().encode(text), { base: null });
      written.push(settingsFile);
    }
    if ((await recordHistory(build, folder, world)).added) written.push('history.jsonl');
    const playing = new Set(build.roles.flatMap(({ role }) => filesOfRole(build.roles, role, build.files)));
    return {
      ...proposal,
      unplaced: proposal.unplaced.filter(({ path }) => !playing.has(path)),
      roles: build.roles,
      missing: proposal.missing.filter(({ role }) => !build.roles.some((found) => found.role === role)),
      leaks: {
        positions: build.shots.filter(({ leaks }) => leaks.position).length,
        secrets: build.secrets.length,
      },
      written,
      leftOut: listing.leftOut,
    };
  } finally {
    await open.pictures.close();
  }
}
