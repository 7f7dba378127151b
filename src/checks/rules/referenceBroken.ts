import type { Build } from '#core/build.ts';
import type { Path, TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { plainPath } from '#prose/knownThings.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { linksOf } from '../linksOf.ts';
import { stepName } from '../say.ts';

export const referenceBroken = defineCheck({
  id: 'reference-broken',
  title: 'Every link inside the guide leads to something that is there.',
  weight: 'slows',
  audience: 'builder',
  why: 'A link that leads nowhere is followed at the very moment when something does not work.',
  basis: 'common practice: links are resolved against the headings and files of the folder',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build }) {
    const anchors = anchorsOf(build);
    const reported = new Map<string, { places: TextPlace[]; draft: Omit<FindingDraft, 'sides'> }>();
    for (const section of [...build.instructions.sections, ...build.beside]) {
      for (const { url, place } of linksOf(section)) {
        const draft =
          toAnchor(build, section, url, anchors) ?? toFile(build, section, url) ?? toPage(build, section, url);
        if (draft === null) continue;
        const key = `${draft.mark}`;
        const entry = reported.get(key) ?? { places: [], draft };
        entry.places.push(place);
        reported.set(key, entry);
      }
    }
    for (const { places, draft } of reported.values()) yield { ...draft, sides: places.slice(0, 5) };
  },
  examples: {
    passes: [
      {
        title: 'headings, repeated headings, marks of one’s own, files, folders and the web',
        files: {
          'guide.md':
            '# Night light\n\nSee [the test](#test-it), [again](#test-it-1), [mark](#here), [the code](code/main.ino), [drawings](design/), [more](notes.md#why), [shop](https://parts.example/d1), [mail](mailto:me@lamp.example).\n\n## Test it\n\n<a id="here"></a>It glows.\n\n## Close it\n\n### Test it\n\nIt still glows.\n',
          'notes.md': '# Notes\n\n## Why\n\nBecause.\n',
          'code/main.ino': 'void setup() {}\n',
          'design/lid.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>\n',
        },
      },
      {
        title: 'pages that a site makes, and what lies outside the folder',
        files: {
          'docs/guide.md':
            '# Night light\n\n[Next]({{ site.url }}/next), [root](/about), [up](../../other/readme.md), [page](notes.html), [made]({{ site.base }}/notes.html), [named]({{ site.base }}/own-name.html), [hidden](../.github/rules.md).\n\n## Test it\n\nIt glows.\n',
          'docs/notes.md': '# Notes\n\nSome.\n',
          'docs/other.md': '---\npermalink: /own-name.html\n---\n\n# Other\n\nSome.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a heading that was renamed, and a file that was moved',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nIf it stays dark, see [what to do](#when-it-stays-dark).\nLoad [the code](code/lamp.ino).\n\n## When it does not glow\n\nTurn D1 round.\n',
          'firmware/lamp.ino': 'void setup() {}\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: '#when-it-stays-dark' },
          { file: 'guide.md', line: 6, words: 'code/lamp.ino' },
        ],
      },
      {
        title: 'pages that a site would make of files which are not there',
        files: {
          'docs/guide.md':
            '# Night light\n\nFor the large one see [its page]({{ site.base }}/large.html), for the small one [that](small.html).\n\n## Test it\n\nIt glows.\n',
          'docs/notes.md': '# Notes\n\nSome.\n',
        },
        expect: [
          { file: 'docs/guide.md', line: 3, words: 'large.html' },
          { file: 'docs/guide.md', line: 3, words: 'small.html' },
        ],
      },
      {
        title: 'a heading of another page, and a step that sends to itself',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSee [Fit the lamp](#fit-the-lamp) and [the list](notes.md#lamps).\n\n## Close it\n\nPress the lid on.\n',
          'notes.md': '# Notes\n\n## Lids\n\nSome.\n',
        },
        expect: [
          { file: 'guide.md', line: 5, words: 'itself' },
          { file: 'guide.md', line: 5, words: 'notes.md#lamps' },
        ],
      },
    ],
  },
});

/** Where links can lead: slugs of the guide's headings and of marks in its text, and those of each other page. */
interface Anchors {
  readonly guide: ReadonlySet<string>;
  readonly pages: ReadonlyMap<Path, ReadonlySet<string>>;
}

function anchorsOf(build: Build): Anchors {
  const pages = new Map([...build.texts.values()].map(({ file, text }) => [file, anchorsIn(text)]));
  const sections = [...build.instructions.sections, ...build.beside];
  const files = new Set(sections.map(({ file }) => file));
  const ids = sections.flatMap(({ id, heading }) => [id, slugOf(heading)]);
  return { guide: new Set([...ids, ...[...files].flatMap((file) => [...(pages.get(file) ?? [])])]), pages };
}

function anchorsIn(text: string): Set<string> {
  const headings = [...text.matchAll(/^ {0,3}#{1,6}[ \t]+(.+?)[ \t]*#*[ \t]*$/gm)].map((match) => match[1] ?? '');
  const underlined = [...text.matchAll(/^(\S.*)\n(?:=+|-{2,})[ \t]*$/gm)].map((match) => match[1] ?? '');
  const marks = [...text.matchAll(/\b(?:id|name)\s*=\s*["']?([^"'\s>]+)|\{:?\s*#([\w-]+)/g)].map(
    (match) => match[1] ?? match[2] ?? '',
  );
  const notes = [...text.matchAll(/^\[\^([^\]]+)\]:/gm)].map((match) => `fn-${match[1]}`);
  return new Set(
    [...headings, ...underlined].map((heading) => slugOf(plain(heading))).concat(marks.map(slugOf), notes),
  );
}

function plain(heading: string): string {
  return heading.replace(/!?\[([^\]]*)\]\([^)]*\)/g, '$1').replace(/\{[^}]*\}|[*_`]/g, '');
}

type Draft = Omit<FindingDraft, 'sides'> & { readonly mark: string };

function toAnchor(build: Build, section: Section, url: string, { guide, pages }: Anchors): Draft | null {
  const [address = '', anchor = ''] = url.split('#');
  if (anchor === '' || isElsewhere(url)) return null;
  const slug = slugOf(decoded(anchor));
  if (address === '') {
    if (section.role === 'step' && slug === section.id)
      return {
        subjects: [`step:${section.id}`],
        mark: `self-${section.id}`,
        message: `The step ${stepName(build, section.id)} sends to itself.`,
        consequence: 'A builder who follows the link is where they were.',
        remedy: 'Name the step that is meant, or drop the link.',
      };
    return has(guide, slug) ? null : broken(section, url, 'the guide has no heading of that name');
  }
  const file = [...pages.keys()].find((page) => page === resolved(section.file, address));
  if (file === undefined || !/\.(?:md|markdown|mdx)$/i.test(file)) return null;
  return has(pages.get(file) ?? new Set(), slug) || has(guide, slug)
    ? null
    : broken(section, url, `${file} has no heading of that name`);
}

/** Sites number headings that repeat. */
function has(anchors: ReadonlySet<string>, slug: string): boolean {
  return slug === '' || slug === 'top' || anchors.has(slug) || anchors.has(slug.replace(/-\d+$/, ''));
}

function toFile(build: Build, section: Section, url: string): Draft | null {
  const address = decoded(url.split(/[?#]/)[0] ?? '');
  if (address === '' || isElsewhere(url)) return null;
  const path = resolved(section.file, address);
  // What lies outside, in hidden folders or among packages was never listed.
  if (path === null || path.split('/').some((name) => name.startsWith('.') || name === 'node_modules')) return null;
  const tail = /\.[a-z0-9_]{1,10}$/i.exec(path)?.[0] ?? '';
  if (tail === '' || /^\.html?$/i.test(tail)) return null;
  const isThere = build.files.some((file) => file.path === path || file.path.startsWith(`${path}/`));
  const fromRoot = build.files.some(
    (file) => file.path === plainPath(address) || file.path.endsWith(`/${plainPath(address)}`),
  );
  return isThere || fromRoot ? null : { ...broken(section, url, 'there is no such file'), mark: path };
}

/**
 * To a page that a site makes of a text of the folder, with a placeholder for the address of the site or beside the
 * text: such a text lies anywhere below the root of the site, or names the page as its own.
 */
function toPage(build: Build, section: Section, url: string): Draft | null {
  const address = decoded(url.split(/[?#]/)[0] ?? '').replace(/^\s*\{\{[^{}]*\}\}\/?/, '');
  if (!/^(?:[\w.-]+\/)*[\w.-]+\.html?$/i.test(address)) return null;
  const page = address.replace(/^(?:\.{1,2}\/)+/, '').toLowerCase();
  const stem = page.replace(/\.html?$/, '');
  const isThere = build.files.some(({ path }) => {
    const own = path.toLowerCase();
    const made = own
      .replace(/\.(?:md|markdown|mdx|html?|rst|adoc)$/, '')
      .replace(/(?:^|\/)(?:readme|_index)$/, '/index');
    return made !== own && (made === stem || made.endsWith(`/${stem}`));
  });
  const isNamed = [...build.texts.values()].some(({ text }) => /^permalink:/m.test(text) && text.includes(page));
  return isThere || isNamed
    ? null
    : { ...broken(section, url, 'no file here would make such a page'), mark: `page-${page}` };
}

function broken(section: Section, url: string, why: string): Draft {
  return {
    subjects: [`file:${section.file}`],
    mark: url,
    message: `A link leads to ${url}; ${why}.`,
    consequence: 'A builder who follows it finds nothing, or the top of a page.',
    remedy: 'Write the heading or the file that is meant, or drop the link.',
  };
}

function isElsewhere(url: string): boolean {
  return /^[a-z][a-z0-9+.-]*:|^\/|^\{|\{[{%]|^<|^\^/i.test(url);
}

/** The path that an address means beside a file; null where it leads out of the folder. */
function resolved(from: Path, address: string): Path | null {
  const here = from.split('/').slice(0, -1);
  for (const name of address.split('/')) {
    if (name === '..') {
      if (here.pop() === undefined) return null;
    } else if (name !== '' && name !== '.') here.push(name);
  }
  return here.join('/');
}

function decoded(url: string): string {
  try {
    return decodeURIComponent(url);
  } catch {
    return url;
  }
}
