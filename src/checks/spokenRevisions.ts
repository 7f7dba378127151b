import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import { filesPlaying } from './filesPlaying.ts';
import { maskUnread } from './maskUnread.ts';

/** A revision of the hardware that somebody speaks of: 'revision 1.2', 'rev. B', 'PCB version 2'. */
export interface Spoken {
  readonly revision: string;
  readonly place: TextPlace;
  /** True where the words are about the build that lies here, not an older, a later or another one. */
  readonly isOwn: boolean;
  readonly isHeading: boolean;
}

const spoken =
  /\b(?:[Rr]evision:?|[Rr]ev[.:]?|(?:[Hh]ardware|[Bb]oard|PCB)[ -]version)\s+(v?\d+(?:\.\d+)*(?:[a-z](?![\p{L}]))?|[A-H])(?![\p{L}\d]|-\p{L})/gu;

/** What the guide calls a revision. */
export function revisionsInGuide(build: Build): Spoken[] {
  return [...filesPlaying(build, 'guide')].flatMap((file) => {
    const source = build.texts.get(file);
    if (source === undefined) return [];
    const text = maskUnread(source);
    return found(source, text, (at, end) => isOwn(text, at, end));
  });
}

/** Revisions in the first comment of a source file, and above the header of a list. */
export function revisionsBesideGuide(build: Build): Spoken[] {
  const title =
    (build.settings.title ?? build.instructions.title ?? '').match(/(?!(?:the|and|for|with|from)\b)\b\p{L}{3,}/giu) ??
    [];
  const inCode = build.sources.flatMap(({ file }) => {
    const source = build.texts.get(file);
    if (source === undefined) return [];
    const head = firstComment.exec(source.text)?.[0] ?? '';
    return onlyOne(
      found(source, head, (at, end) => {
        const line = lineAround(head, at, end);
        const isNamed = title.some((word) => line.toLowerCase().includes(word.toLowerCase()));
        return (isNamed || /\b(?:board|pcb|hardware)\b/i.test(line)) && !ofTheProgram.test(line);
      }),
    );
  });
  const inLists = [...filesPlaying(build, 'parts', 'wiring', 'tools')].flatMap((file) => {
    const source = build.texts.get(file);
    if (source === undefined || !/\.(?:csv|tsv|txt)$/i.test(file)) return [];
    const rows = [...build.parts, ...build.connections].flatMap(({ place }) => (place.file === file ? place.line : []));
    // The line before the first row is the header.
    const before = source.lineStarts[Math.min(...rows) - 2] ?? 0;
    return onlyOne(found(source, source.text.slice(0, before), () => true));
  });
  return [...inCode, ...inLists].filter((one) => one.isOwn);
}

function found(source: SourceText, text: string, own: (at: number, end: number) => boolean): Spoken[] {
  return [...text.matchAll(spoken)].map((match) => {
    const end = match.index + match[0].length;
    return {
      revision: match[1] ?? '',
      place: placeOf(source, [match.index, end]),
      isOwn: own(match.index, end),
      isHeading: /^#/.test(lineAround(text, match.index, end)),
    };
  });
}

const firstComment =
  /^(?:\s*(?:\/\*[\s\S]*?\*\/|"""[\s\S]*?"""|(?:\/\/|#(?!\s*(?:include|define|if|pragma)\b))[^\n]*\n))+/;
const ofTheProgram = /\b(?:firmware|software|sketch|program|code|library|driver)\b|\b(?:19|20)\d\d\b|\bchip|silicon/i;

/** A comment with several of them is a history. */
function onlyOne(all: readonly Spoken[]): Spoken[] {
  return all.length === 1 ? [...all] : [];
}

const tellsOfBuilding =
  /\b(?:built|sewn|soldered|assembled|made|tested)\b.*\b(?:as|of|in|from|after)\s+(?:the\s+)?(?:hardware\s+|board\s+)?$/isu;
const tellsOfGuide =
  /(?:^|[^\p{L}])(?:this|these|the present)\s+(?:guide|build|document|manual|page|text|instructions|folder|project|version)\b[^.;]{0,40}\b(?:is|are|for|describes?|covers?|of|to|with|as)\s+(?:the\s+)?$|^\s*this is\s+(?:the\s+)?$/isu;
const tellsOfReport =
  /\b(?:errors?|mistakes?|questions?|problems?|bugs?)\b.*\b(?:with|and|name|give|quote|say)\s+(?:the\s+|your\s+)?$/isu;
const asDescribed = /\bas described (?:here|in this)|\b(?:after|from|with) this guide\b/i;
const ofAnother =
  /\b(?:old|older|earlier|previous|former|first|prototypes?|before|until|since|was|were|had|no longer|unlike|instead|than|not|other|only|if|except|differs?|changed?|new|next|future|planned|upgrades?|updates?)\b/i;
const ofHistory = /\b(?:changes?|change ?log|history|revisions|versions|releases?|what(?:’|')?s new|roadmap|to ?do)\b/i;

function isOwn(text: string, at: number, end: number): boolean {
  const line = lineAround(text, at, end);
  const heading = /^(#{1,6})\s+(.*)$/.exec(line);
  if (heading !== null) return heading[1] === '#' || /\b(?:parts|materials|bom|wiring|schematic)\b/i.test(line);
  if (ofHistory.test(headingBefore(text, at))) return false;
  if (/^[\s*_>|-]*rev(?:ision)?\.?[\s*_:|]+\S+[\s*_|.]*$/i.test(line)) return true;
  const before =
    text
      .slice(0, at)
      .split(/[.!?]\s|\n\s*\n|\n[ \t]*[-*#|]/)
      .at(-1) ?? '';
  const rest = /[.!?](?:\s|$)|\n\s*\n|$/.exec(text.slice(end));
  const sentence = text.slice(at - before.length, end + (rest?.index ?? 0));
  if ((sentence.match(spoken) ?? []).length > 1) return false;
  if (ofAnother.test(sentence) && !asDescribed.test(sentence)) return false;
  return tellsOfBuilding.test(before) || tellsOfGuide.test(before) || tellsOfReport.test(before);
}

function headingBefore(text: string, at: number): string {
  return [...text.slice(0, at).matchAll(/^#{1,6}\s+(.*)$/gm)].at(-1)?.[1] ?? '';
}

function lineAround(text: string, at: number, end: number): string {
  const from = text.lastIndexOf('\n', at - 1) + 1;
  const to = text.indexOf('\n', end);
  return text.slice(from, to < 0 ? text.length : to);
}
