import type { Build } from '#core/build.ts';
import type { Span, TextPlace } from '#core/place.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import { filesPlaying } from './filesPlaying.ts';
import { maskUnread } from './maskUnread.ts';

/** A line that defines where a label leads; `^` stands before the label of a footnote. */
export interface LinkDefinition {
  readonly label: string;
  readonly target: string;
  readonly place: TextPlace;
  /** Whether the definition is this line and no more. */
  readonly isOneLine: boolean;
}

/** The definitions that stand by themselves between the blocks of the guide's pages and of those beside it; comments that look like one left out. */
export function linkDefinitions(build: Build): LinkDefinition[] {
  return [...filesPlaying(build, 'guide'), ...new Set(build.beside.map(({ file }) => file))].flatMap((file) => {
    const source = build.texts.get(file);
    return source === undefined || !/\.(?:md|markdown|mdx)$/i.test(file) ? [] : definitionsIn(source, build);
  });
}

const definition = /^ {0,3}\[((?:[^[\]\\]|\\.)+)\]:[ \t]*(\S*)/gm;

function definitionsIn(source: SourceText, build: Build): LinkDefinition[] {
  const taken = blocksOf(source, build);
  const masked = maskUnread(source);
  return [...source.text.matchAll(definition)].flatMap((match): LinkDefinition[] => {
    const start = match.index + match[0].indexOf('[');
    const [, label = '', target = ''] = match;
    const isHidden = masked[start] !== '[' || taken.some(([from, to]) => start >= from && start < to);
    const isComment = /^(?:#|<>|<#>)$/.test(target) || label === '//' || target === '';
    if (isComment || (isHidden && !label.startsWith('^'))) return [];
    if (label.startsWith('^') && masked[start] !== '[') return [];
    const end = source.text.slice(start).search(/[\r\n]|$/) + start;
    const after = source.text.slice(end).replace(/^(?:\r\n|\r|\n)/, '');
    return [{ label, target, place: placeOf(source, [start, end]), isOneLine: /^[ \t]*(?:[\r\n[]|$)/.test(after) }];
  });
}

/** Where blocks of the page stand: what looks like a definition in them is none. */
function blocksOf({ file }: SourceText, { instructions }: Build): Span[] {
  return instructions.sections
    .filter((section) => section.file === file)
    .flatMap(({ blocks }) => blocks.map(({ place }) => place.span));
}
