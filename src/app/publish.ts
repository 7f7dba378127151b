import { Failure } from '#core/failure.ts';
import type { Audience } from '#core/finding.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { Asset, AssetWant } from '#core/shot.ts';
import { withholdSecrets } from '#formats/sources/secrets.ts';
import { composeGuide } from '#guide/composeGuide.ts';
import { wantAssets } from '#guide/wantAssets.ts';
import { filePath } from '#render/site/renderFiles.ts';
import { renderSite } from '#render/site/renderSite.ts';
import { type Judgement, judgeOpen } from './check.ts';
import { filesBeside } from './filesBeside.ts';
import { filesOfRole } from './filesOfRole.ts';
import { type OpenBuild, openBuild } from './openBuild.ts';
import { pictureProblem } from './pictureProblem.ts';
import type { FolderPort, World } from './ports.ts';
import { replaceOutput } from './replaceOutput.ts';
import { withholdWords, wordsToWithhold } from './withholdWords.ts';

/** Forms in which a guide can be published. */
export const outputKinds = ['site'] as const;
export type OutputKind = (typeof outputKinds)[number];

export interface Publication extends Judgement {
  readonly outputs: readonly {
    readonly kind: OutputKind;
    readonly path: string;
    readonly files: number;
    readonly bytes: number;
  }[];
  /** Private fields that pictures carried and their copies do not. */
  readonly cleaned: readonly { readonly path: Path; readonly removed: readonly string[] }[];
  /** Credentials that were taken out of published texts. */
  readonly withheld: readonly { readonly file: Path; readonly line: number; readonly kind: string }[];
  /** Pictures that could not be made, with the reason. */
  readonly leftOut: readonly Problem[];
}

/**
 * Publishes a folder's guide: reads, rehearses and checks it, composes it once and writes it out into `output`,
 * with clean copies of its pictures and with credentials withheld. What it halts on is reported, not hidden.
 */
export async function publish(
  folder: FolderPort,
  output: FolderPort,
  world: World,
  options: { readonly only?: readonly OutputKind[]; readonly for?: Audience } = {},
): Promise<Publication> {
  const open = await openBuild(folder, world);
  try {
    const judgement = await judgeOpen(open, world, options);
    if (judgement.judged.build.instructions.sections.length === 0) {
      throw new Failure(
        'bad-request',
        `There is no guide in ${folder.root}.`,
        'Write one as guide.md (Markdown, a heading for each step), or name its file under roles in twicebuilt.yaml.',
      );
    }
    return await writeOutputs(open, output, world, judgement);
  } finally {
    await open.pictures.close();
  }
}

async function writeOutputs(
  open: OpenBuild,
  output: FolderPort,
  world: World,
  judgement: Judgement,
): Promise<Publication> {
  const { build } = open;
  const code = publishedCode(open);
  const beside = await filesBeside(open);
  const composed = composeGuide(
    { ...judgement.judged, findings: judgement.findings },
    { code, files: beside.map(({ row }) => row) },
  );
  const guide = withholdWords(composed, wordsToWithhold(build.secrets, build.texts));
  const made = await makeAssets(wantAssets(guide), open, world);
  world.progress.report('Writing the site', 0, null);
  const pages = renderSite(
    guide,
    made.assets.map(({ asset }) => asset),
  );
  const files = new Map<Path, Uint8Array>(pages.map(({ path, text }) => [path, new TextEncoder().encode(text)]));
  for (const { row, data } of beside) if (data !== null) files.set(filePath(row.path), data);
  for (const { asset, data } of made.assets) files.set(asset.name, data);
  await replaceOutput(output, 'site', files);
  const publishedFiles = new Set([
    ...code.map(({ path }) => path),
    ...(['guide', 'parts', 'tools', 'wiring', 'log'] as const).flatMap((role) =>
      filesOfRole(build.roles, role, build.files),
    ),
  ]);
  return {
    ...judgement,
    outputs: [
      {
        kind: 'site',
        path: `${output.root}/site`,
        files: files.size,
        bytes: sum([...files.values()].map(({ length }) => length)),
      },
    ],
    cleaned: made.cleaned,
    withheld: build.secrets
      .filter(({ place }) => publishedFiles.has(place.file))
      .map(({ place, kind }) => ({ file: place.file, line: place.line, kind })),
    leftOut: made.leftOut,
  };
}

/** The build's code and its manifests, as they may be shown. */
function publishedCode({ build }: OpenBuild): { path: Path; language: string; text: string; withheld: number }[] {
  return filesOfRole(build.roles, 'code', build.files).flatMap((path) => {
    const source = build.texts.get(path);
    if (source === undefined) return [];
    const secrets = build.secrets.filter(({ place }) => place.file === path);
    const language = build.sources.find(({ file }) => file === path)?.language ?? 'text';
    return [{ path, language, text: withholdSecrets(source, secrets), withheld: secrets.length }];
  });
}

interface MadeAssets {
  assets: { asset: Asset; data: Uint8Array }[];
  cleaned: { path: Path; removed: readonly string[] }[];
  leftOut: Problem[];
}

async function makeAssets(wants: readonly AssetWant[], open: OpenBuild, world: World): Promise<MadeAssets> {
  let done = 0;
  const results = await Promise.all(
    wants.map(async (want) => {
      const result = await open.pictures.clean(want, assetName(want, open));
      world.progress.report('Making clean copies of pictures', ++done, wants.length);
      return { want, result };
    }),
  );
  const made: MadeAssets = { assets: [], cleaned: [], leftOut: [] };
  for (const { want, result } of results) {
    if (!result.ok) {
      if (made.leftOut.some(({ place }) => place.file === want.shot)) continue;
      made.leftOut.push(pictureProblem(want.shot, result.reason));
      continue;
    }
    // Two wants can come to the same copy, where the original is smaller than either.
    const { asset, data, removed } = result.value;
    if (!made.assets.some((other) => other.asset.name === asset.name)) made.assets.push({ asset, data });
    if (!made.cleaned.some(({ path }) => path === want.shot)) made.cleaned.push({ path: want.shot, removed });
  }
  return made;
}

/** A name made of the picture's content and size: the same picture keeps its address, a changed one gets another. */
function assetName(want: AssetWant, { build }: OpenBuild): string {
  const hash = build.shots.find(({ path }) => path === want.shot)?.hash.slice(0, 12) ?? 'unknown';
  return `pictures/${hash}-${want.width}.${want.format === 'jpeg' ? 'jpg' : want.format}`;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, n) => total + n, 0);
}
