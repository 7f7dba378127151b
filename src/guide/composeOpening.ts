import type { Build } from '#core/build.ts';
import type { Section } from '#core/step.ts';
import { composeBody, type Drafting } from './composeBody.ts';
import { composeCoverPicture } from './composePicture.ts';
import type { BodyBlock, CoverBlock, SectionBlock, Words } from './guide.ts';

/** What stands before everything else. */
export interface Opening {
  readonly cover: CoverBlock | null;
  /** What it is for: the settings' summary, else the first paragraph under the title. */
  readonly purpose: readonly Words[] | null;
  /** What the maker wrote under the title besides. */
  readonly sections: readonly SectionBlock[];
}

export function composeOpening(build: Build, title: Section | null, drafting: Drafting): Opening {
  const { settings } = build;
  const id = drafting.names.of('section', 'opening');
  const pictureOf = `Picture of ${settings.title ?? title?.heading ?? build.name}`;
  const body = composeBody(title?.blocks ?? [], { parent: id, pictureOf }, drafting);
  const cover = composeCover(build, body, pictureOf, drafting);
  const lead = body.find((block) => block.kind === 'paragraph');
  const purpose = settings.summary === null ? (lead?.words ?? null) : textOnly(settings.summary);
  const rest = body.filter(
    (block) =>
      !(cover && pathOf(block) === pathOf(cover.picture)) &&
      !(block === lead && JSON.stringify(block.words) === JSON.stringify(purpose)),
  );
  const places = title ? [title.place] : [];
  return {
    cover,
    purpose,
    sections:
      rest.length > 0
        ? [{ kind: 'section', id, places, heading: null, level: 2, folded: false, troubleshooting: false, body: rest }]
        : [],
  };
}

/** The picture that the settings name, else the first one under the title; a guide without either has no cover. */
function composeCover(
  build: Build,
  body: readonly BodyBlock[],
  instead: string,
  drafting: Drafting,
): CoverBlock | null {
  const shown = body.find((block) => block.kind === 'picture');
  const path = build.settings.cover ?? shown?.shot;
  if (path === undefined) return null;
  const id = drafting.names.of('cover', 'picture');
  const place = build.settings.places.cover;
  const places = build.settings.cover !== null && place ? [place] : (shown?.places ?? []);
  const picture = composeCoverPicture(path, places, {
    parent: id,
    shot: drafting.shots.get(path),
    choice: drafting.choices.get(path),
    names: drafting.names,
    instead,
    alt: describedAs(build, path),
  });
  return { kind: 'cover', id, places, picture };
}

/** The file that a picture block shows or misses. */
function pathOf(block: BodyBlock): string | null {
  if (block.kind === 'picture') return block.shot;
  return block.kind === 'missingPicture' ? block.wanted : null;
}

function describedAs(build: Build, path: string): string | null {
  const pictures = build.instructions.sections.flatMap((section) => section.pictures);
  return pictures.find((picture) => picture.path === path && picture.alt.trim() !== '')?.alt.trim() ?? null;
}

function textOnly(value: string): Words[] {
  return [{ kind: 'text', value }];
}
