import { stringify } from 'yaml';
import type { Role, Settings } from '#core/settings.ts';

/** What the first settings file can say: any setting but the places, and in any case a title and the roles. */
export type FirstSettings = Partial<Omit<Settings, 'places' | 'format'>> & {
  readonly title: string | null;
  readonly roles: readonly Role[];
};

/**
 * A first `twicebuilt.yaml`: every setting that is known, each role with the reason why it was given, and a comment
 * for each setting that a maker may want to add. `comments` replaces the comment above a setting.
 */
export function formatSettings(settings: FirstSettings, comments: Readonly<Record<string, string>> = {}): string {
  const blocks = [
    opening,
    entry('format', 1, { ...usual, ...comments }),
    ...(
      [
        'title',
        'summary',
        'authors',
        'licences',
        'status',
        'revision',
        'skills',
        'supply',
        'language',
        'cover',
        'reports',
        'site',
      ] as const
    ).map((key) => entry(key, settings[key], { ...usual, ...comments })),
    roleBlock(settings.roles, comments.roles ?? usual.roles ?? ''),
    entry('accepted', settings.accepted, { ...usual, ...comments }),
    entry('dismissedRules', settings.dismissedRules, { ...usual, ...comments }),
    entry('impactDone', settings.impactDone, { ...usual, ...comments }),
    entry('declined', settings.declined, { ...usual, ...comments }),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

const opening = comment(
  'What this build is, and which file plays which role. Written once; from now on it is yours.\n' +
    'Edit it with any editor: comments, order and keys of your own are kept.',
);

const usual: Readonly<Record<string, string>> = {
  format: 'The form of this file. Leave it as it is.',
  roles:
    'Which files play which role. A place is a file, a folder, or one section of a file (guide.md#parts).\n' +
    'Add, remove or reorder places; a role that is not listed here is looked for again each time.',
  summary: 'summary: One sentence that says what it does.',
  authors: 'authors: [Your name]',
  licences: 'licences:\n  hardware: an SPDX identifier\n  code: an SPDX identifier\n  text: an SPDX identifier',
  status: 'status: idea, prototype, built, or replicated',
  revision: 'revision: A',
  skills: 'skills: [through-hole soldering]',
  supply: 'supply: 5 V, 2 A',
  reports: 'reports: an address, of a page or for mail, where readers report an error',
  site: 'site: the web address under which the guide will stand',
};

/** One setting with the comment above it. Where it is not stated, the comment alone shows how it is written. */
function entry(key: string, value: unknown, comments: Readonly<Record<string, string>>): string {
  const stated = isStated(value);
  const isHint = comments[key]?.startsWith(`${key}:`) === true;
  const above = comments[key] !== undefined && !(stated && isHint) ? [comment(comments[key])] : [];
  const line = stated ? [stringify({ [key]: plain(value) }, { lineWidth: 0 }).trimEnd()] : [];
  return stated || isHint ? [...above, ...line].join('\n') : '';
}

function isStated(value: unknown): boolean {
  if (value === null || value === undefined) return false;
  if (Array.isArray(value)) return value.length > 0;
  return typeof value !== 'object' || Object.values(value).some((each) => each !== null);
}

/** Without the fields that are not said. */
function plain(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).filter(([, each]) => each !== null));
}

function roleBlock(roles: readonly Role[], above: string): string {
  if (roles.length === 0) return `${comment(above)}\nroles: {}`;
  const lines = roles.map(({ role, places, why }) => {
    const list = stringify({ [role]: places }, { lineWidth: 0 }).trimEnd();
    return indent([...(why === '' ? [] : [comment(why)]), list].join('\n'));
  });
  return [comment(above), 'roles:', ...lines].join('\n');
}

function comment(text: string): string {
  return text
    .split(/\r\n|\r|\n/)
    .map((line) => `# ${line}`.trimEnd())
    .join('\n');
}

function indent(text: string): string {
  return text.replace(/^(?=.)/gm, '  ');
}
