import type { Path, TextPlace } from './place.ts';

/** Roles that the files of a build folder play. */
export const roleNames = [
  'settings',
  'guide',
  'parts',
  'tools',
  'wiring',
  'log',
  'code',
  'design',
  'shots',
  'choices',
  'boards',
  'venues',
  'rights',
  'people',
  'feedback',
  'errata',
  'history',
  'licences',
] as const;

export type RoleName = (typeof roleNames)[number];

/** A file, a folder, or one section of a file (`guide.md#parts`, by slug of its heading). */
export type RolePlace = string;

/** Which places play a role, and what they were recognised by. */
export interface Role {
  readonly role: RoleName;
  readonly places: readonly RolePlace[];
  readonly why: string;
}

/** A finding that the maker has accepted, with the digests of both sides at that time. */
export interface Acceptance {
  readonly finding: string;
  readonly reason: string;
  readonly digests: readonly string[];
}

/** `twicebuilt.yaml` as read. Null: not said. */
export interface Settings {
  readonly format: number;
  readonly title: string | null;
  readonly summary: string | null;
  readonly authors: readonly string[];
  readonly licences: { readonly hardware: string | null; readonly code: string | null; readonly text: string | null };
  readonly status: string | null;
  readonly revision: string | null;
  readonly skills: readonly string[];
  readonly supply: string | null;
  readonly language: string;
  readonly cover: Path | null;
  /** Where readers report an error: a web address, or a mail address with or without `mailto:`. */
  readonly reports: string | null;
  /** The web address under which the guide is published. */
  readonly site: string | null;
  readonly roles: readonly Role[];
  readonly accepted: readonly Acceptance[];
  readonly dismissedRules: readonly string[];
  /** What the maker has looked at after changes, by the names of the items. */
  readonly impactDone: readonly string[];
  /** Proposed facts that the maker does not want, by the names of the proposals. */
  readonly declined: readonly string[];
  /** Where each top-level key stands, and by 'licences.code' and the like each licence that has a key of its own. */
  readonly places: Readonly<Record<string, TextPlace>>;
}

/** Settings of a folder that has no `twicebuilt.yaml`. */
export const noSettings: Settings = {
  format: 1,
  title: null,
  summary: null,
  authors: [],
  licences: { hardware: null, code: null, text: null },
  status: null,
  revision: null,
  skills: [],
  supply: null,
  language: 'en',
  cover: null,
  reports: null,
  site: null,
  roles: [],
  accepted: [],
  dismissedRules: [],
  impactDone: [],
  declined: [],
  places: {},
};
