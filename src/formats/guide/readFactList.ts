import type { List, ListItem } from 'mdast';
import type { Span } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { placeOf, type SourceText, spanOfLine } from '#core/sourceText.ts';
import { factLabels, type WrittenFact } from '#core/step.ts';
import { factLabelOf } from './factLabelOf.ts';
import { spanOfNode } from './parseMarkdown.ts';

export interface FactList {
  /** True where every item opens with a known label. */
  readonly complete: boolean;
  readonly facts: readonly WrittenFact[];
  readonly problems: readonly Problem[];
}

/**
 * The facts of a list whose items open with known labels: each value is the item's first line in the source, since
 * a Markdown parser drops characters of names such as `__init__` or `D[0]`. Null where too few items are labelled.
 */
export function readFactList(list: List, shift: number, source: SourceText): FactList | null {
  const lines = list.children.map((item) => firstLineOf(item, shift, source));
  const labels = lines.map((span) => factLabelOf(source.text.slice(...span)));
  const known = labels.filter((label) => label !== null).length;
  if (known === 0 || known * 2 <= labels.length) return null;
  const odd = lines.filter((_, index) => labels[index] === null);
  if (odd.length > 0) return { complete: false, facts: [], problems: odd.map((span) => oddItem(span, source)) };
  const facts = lines.flatMap((span, index): WrittenFact[] => {
    const found = labels[index];
    if (found === null || found === undefined) return [];
    const place = placeOf(source, [span[0] + found.length, span[1]]);
    return [{ label: found.label, value: place.quote, place }];
  });
  const problems = list.children.flatMap((item, index) => restOfItem(item, lines[index], shift, source));
  return { complete: true, facts, problems };
}

/** From the item's first word to the end of that line. Blanks at its end are left out. */
function firstLineOf(item: ListItem, shift: number, source: SourceText): Span {
  const first = item.children[0];
  const start = first === undefined ? spanOfNode(item, shift)[1] : spanOfNode(first, shift)[0];
  const [, end] = spanOfLine(source, placeOf(source, [start, start]).line);
  return [start, start + source.text.slice(start, end).trimEnd().length];
}

function oddItem(span: Span, source: SourceText): Problem {
  return {
    place: placeOf(source, span),
    message: `This list would be read as the step's facts but for the item '${source.text.slice(...span)}', which opens with no known label.`,
    remedy: `Open it with one of ${factLabels.join(', ')} and a colon, or move it out of the list.`,
  };
}

function restOfItem(item: ListItem, line: Span | undefined, shift: number, source: SourceText): Problem[] {
  const end = spanOfNode(item, shift)[1];
  if (line === undefined || source.text.slice(line[1], end).trim() === '') return [];
  return [
    {
      place: placeOf(source, [line[1], end]),
      message: 'A fact is read from the first line of its item; what stands below that line is not read.',
      remedy: 'Write the fact on one line, or as several facts with the same label.',
    },
  ];
}
