import { type Document, isAlias, isMap, isScalar, isSeq, type Node, type ParsedNode, parseDocument } from 'yaml';
import type { Span, TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';

/** A value in a YAML text. */
export type YamlValue = Node | null;

/** One entry of a map: its key as written, where the key stands, and its value. */
export interface YamlEntry {
  readonly key: string;
  readonly node: Node;
  readonly place: TextPlace;
  readonly value: YamlValue;
}

/** A part of a text read as YAML. `entries` is null where it is no map. */
export interface YamlRecord {
  readonly entries: readonly YamlEntry[] | null;
  readonly isEmpty: boolean;
  readonly problems: Problem[];
  readonly reader: YamlReader;
}

/** Reads a span of a text as YAML. Whatever can be read is read; what cannot is a problem. */
export function readYaml(source: SourceText, span: Span): YamlRecord {
  const document = parseYaml(source.text.slice(span[0], span[1]));
  const reader = new YamlReader(source, document, span[0]);
  const problems = document.errors.map((error) => ({
    place: placeOf(source, clipped(source, [error.pos[0] + span[0], error.pos[1] + span[0]])),
    message: `This is no YAML as expected: ${error.message}.`,
    remedy: 'Mend the line. A value that holds a colon, or begins with a mark such as @ or *, needs quotes around it.',
  }));
  const contents = document.contents;
  const isEmpty = contents === null || (isScalar(contents) && contents.value === null);
  return { entries: reader.entriesOf(contents), isEmpty, problems, reader };
}

/** A text as a YAML document; a lone carriage return ends a line, as the standard has it. */
export function parseYaml(text: string): Document.Parsed<ParsedNode> {
  return parseDocument(text.replace(/\r(?!\n)/g, '\n'), { prettyErrors: false, logLevel: 'silent' });
}

/** Reads values of one document. Each method gives null for a value of another form. */
export class YamlReader {
  private readonly source: SourceText;
  private readonly document: Document;
  private readonly offset: number;

  constructor(source: SourceText, document: Document, offset: number) {
    this.source = source;
    this.document = document;
    this.offset = offset;
  }

  entriesOf(value: YamlValue): YamlEntry[] | null {
    const node = this.resolved(value);
    if (!isMap(node)) return null;
    return node.items.flatMap((pair) => {
      const node = pair.key as Node;
      const key = this.textOf(node);
      return key === null ? [] : [{ key, node, place: this.placeOf(node), value: pair.value as YamlValue }];
    });
  }

  itemsOf(value: YamlValue): YamlValue[] | null {
    const node = this.resolved(value);
    return isSeq(node) ? node.items.map((item) => item as YamlValue) : null;
  }

  /** The words of a single value as written: revision 1.0 stays '1.0'. Null for an empty one. */
  textOf(value: YamlValue): string | null {
    const node = this.resolved(value);
    if (!isScalar(node) || node.value === null) return null;
    return typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));
  }

  isNothing(value: YamlValue): boolean {
    const node = this.resolved(value);
    return node === null || (isScalar(node) && node.value === null);
  }

  placeOf(node: Node): TextPlace {
    const [start = 0, end = 0] = node.range ?? [];
    const span = clipped(this.source, [start + this.offset, end + this.offset]);
    // A list or map is said to reach up to the next key.
    const words = this.source.text.slice(span[0], span[1]).trimEnd();
    return placeOf(this.source, [span[0], span[0] + words.length]);
  }

  private resolved(value: YamlValue): YamlValue {
    return isAlias(value) ? (value.resolve(this.document) ?? null) : value;
  }
}

function clipped(source: SourceText, [start, end]: Span): Span {
  const length = source.text.length;
  return [Math.min(start, length), Math.min(Math.max(start, end), length)];
}
