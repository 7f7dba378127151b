import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Edit } from '#core/edit.ts';
import { Failure } from '#core/failure.ts';
import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { spliceText } from '../edit/applyEdit.ts';
import { blockYaml, flowYaml } from './settingYaml.ts';
import { parseYaml } from './yamlRecord.ts';

export type SettingValue =
  | string
  | number
  | boolean
  | readonly SettingValue[]
  | { readonly [key: string]: SettingValue };

/**
 * The smallest edit that sets one value of a settings file: every byte around it stays, comments and layout included.
 * `path` names keys from the outside in; in a list an index names an entry, and '-' the place after the last
 * (as RFC 6901 has it). What is missing on the way is added. Throws `Failure` where the file cannot be read as YAML
 * or the value cannot be set without touching others.
 */
export function editSetting(source: SourceText, path: readonly string[], value: SettingValue): Edit {
  const document = parseYaml(source.text);
  if (document.errors.length > 0) throw cannot(source, 'it holds lines that are no YAML');
  const change = new SettingEditor(source.text).set(document.contents, path, value);
  if (change === null) throw cannot(source, `'${path.join('.')}' has another form there`);
  const edit: Edit = { file: source.file, base: source.hash, changes: [change], why: `set ${path.join('.')}` };
  if (!doesOnly(source.text, edit, path, value)) {
    throw cannot(source, `'${path.join('.')}' cannot be set without touching what stands around it`);
  }
  return edit;
}

/**
 * The smallest edit that takes one entry out of a list in block form, with its lines. Throws `Failure` where there is
 * no such entry or it cannot go without touching others.
 */
export function removeEntry(source: SourceText, list: string, index: number): Edit {
  const document = parseYaml(source.text);
  const node = isMap(document.contents) ? (pairOf(document.contents, list)?.value as Node | null) : null;
  const item = isSeq(node) && node.flow !== true ? (node.items[index] as Node | undefined) : undefined;
  if (item === undefined) throw cannot(source, `'${list}' has no entry ${index + 1} with lines of its own`);
  const lineStart = /[^\r\n]*$/.exec(source.text.slice(0, item.range?.[0] ?? 0))?.[0].length ?? 0;
  const end = endOfNode(item);
  const rest = /^[^\r\n]*(?:\r\n|\r|\n)?/.exec(source.text.slice(end))?.[0].length ?? 0;
  const change = { span: [(item.range?.[0] ?? 0) - lineStart, end + rest] as const, text: '' };
  const edit: Edit = { file: source.file, base: source.hash, changes: [change], why: `take out of ${list}` };
  if (!takesOnly(source.text, edit, list, index)) throw cannot(source, `an entry of '${list}' shares its lines`);
  return edit;
}

type SettingChange = Edit['changes'][number];

class SettingEditor {
  private readonly text: string;
  private readonly newline: string;

  constructor(text: string) {
    this.text = text;
    this.newline = /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
  }

  /** Null where the path leads through a value that holds nothing. */
  set(contents: Node | null, path: readonly string[], value: SettingValue): SettingChange | null {
    if (contents === null || isNothing(contents)) return this.appendLine(nested(path, value));
    let node: Node = contents;
    for (const [depth, name] of path.entries()) {
      const rest = nested(path.slice(depth + 1), value);
      if (isMap(node)) {
        const pair = pairOf(node, name);
        if (pair === null) return this.addPair(node, { [name]: rest });
        const next = pair.value as Node | null;
        if (next === null || isNothing(next)) return this.fillPair(pair, rest);
        node = next;
      } else if (isSeq(node)) {
        const item = node.items[Number(name)] as Node | undefined;
        if (name === '-' || item === undefined) return name === '-' ? this.addItem(node, rest) : null;
        node = item;
      } else {
        return null;
      }
    }
    return this.replace(node, value);
  }

  private replace(node: Node, value: SettingValue): SettingChange {
    const span = contentSpan(node);
    const isBlock = (isMap(node) || isSeq(node)) && node.flow !== true;
    return { span, text: isBlock ? this.block(value, this.columnOf(span[0])) : flowYaml(value) };
  }

  private addPair(map: YAMLMap, pair: { readonly [key: string]: SettingValue }): SettingChange | null {
    const last = map.items.at(-1);
    if (map.flow === true) return this.addInFlow(map, last, flowYaml(pair).slice(1, -1).trim());
    if (last === undefined) return null;
    const start = (map.items[0]?.key as Node | undefined)?.range?.[0] ?? 0;
    return this.insertAfter(endOfPair(last), this.block(pair, this.columnOf(start)), this.columnOf(start));
  }

  private addItem(list: YAMLSeq, value: SettingValue): SettingChange | null {
    const last = list.items.at(-1);
    if (list.flow === true) return this.addInFlow(list, last, flowYaml(value));
    if (last === undefined) return null;
    const column = this.columnOf(list.range?.[0] ?? 0);
    return this.insertAfter(endOfNode(last as Node), this.block([value], column), column);
  }

  private addInFlow(node: YAMLMap | YAMLSeq, last: unknown, text: string): SettingChange {
    const [start, end] = contentSpan(node);
    if (last === undefined) return { span: [start + 1, end - 1], text };
    const at = isMap(node) ? endOfPair(last as Pair) : endOfNode(last as Node);
    return { span: [at, at], text: `, ${text}` };
  }

  /** Gives a value to a key that has none: on its line where it is short, on the lines below where it is not. */
  private fillPair(pair: Pair, value: SettingValue): SettingChange {
    const key = pair.key as Node;
    const colon = this.text.indexOf(':', endOfNode(key));
    if (typeof value !== 'object') return { span: [colon + 1, colon + 1], text: ` ${flowYaml(value)}` };
    const column = this.columnOf(key.range?.[0] ?? 0) + 2;
    return this.insertAfter(colon + 1, this.block(value, column), column);
  }

  /** New lines below the one that holds an offset. */
  private insertAfter(offset: number, block: string, column: number): SettingChange {
    let at = offset;
    while (at > 0 && /[\s]/.test(this.text[at - 1] ?? '')) at--;
    const lineEnd = this.text.slice(at).search(/[\r\n]/);
    at = lineEnd < 0 ? this.text.length : at + lineEnd;
    return { span: [at, at], text: `${this.newline}${' '.repeat(column)}${block}` };
  }

  private appendLine(value: SettingValue): SettingChange {
    const at = this.text.length;
    const open = at > 0 && !/[\r\n]$/.test(this.text) ? this.newline : '';
    return { span: [at, at], text: `${open}${this.block(value, 0)}${this.newline}` };
  }

  private block(value: SettingValue, column: number): string {
    return blockYaml(value, column, this.newline);
  }

  private columnOf(offset: number): number {
    const before = this.text.slice(0, offset);
    return offset - (Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1);
  }
}

function nested(path: readonly string[], value: SettingValue): SettingValue {
  return path.reduceRight<SettingValue>((inner, name) => (name === '-' ? [inner] : { [name]: inner }), value);
}

function pairOf(map: YAMLMap, name: string): Pair | null {
  return map.items.find(({ key }) => isScalar(key) && String(key.source ?? key.value) === name) ?? null;
}

function isNothing(node: Node): boolean {
  const [start = 0, end = 0] = node.range ?? [];
  return isScalar(node) && node.value === null && start === end;
}

function contentSpan(node: Node): Span {
  const [start = 0, end = 0] = node.range ?? [];
  return [start, isMap(node) || isSeq(node) ? endOfNode(node) : end];
}

/** The end of what a node says, without the comments and blank lines that follow. */
function endOfNode(node: Node): number {
  const end = node.range?.[1] ?? 0;
  if ((!isMap(node) && !isSeq(node)) || node.flow === true) return end;
  const last = node.items.at(-1);
  if (last === undefined) return end;
  return isMap(node) ? endOfPair(last as Pair) : endOfNode(last as Node);
}

function endOfPair(pair: Pair): number {
  const value = pair.value as Node | null;
  return value === null ? endOfNode(pair.key as Node) : Math.max(endOfNode(value), endOfNode(pair.key as Node));
}

/** Whether the edit sets the value and nothing else, as the file reads before and after. */
function doesOnly(text: string, edit: Edit, path: readonly string[], value: SettingValue): boolean {
  try {
    const after = parseYaml(spliceText(text, edit.changes));
    if (after.errors.length > 0) return false;
    const expected = withValue(parseYaml(text).toJS() as unknown, path, value);
    return JSON.stringify(after.toJS()) === JSON.stringify(expected);
  } catch {
    // Aliases that lead nowhere, or to themselves, cannot be resolved.
    return false;
  }
}

function takesOnly(text: string, edit: Edit, list: string, index: number): boolean {
  const before = parseYaml(text).toJS() as Record<string, unknown[]>;
  const after = parseYaml(spliceText(text, edit.changes));
  if (after.errors.length > 0) return false;
  const left = (before[list] ?? []).filter((_, at) => at !== index);
  const now = after.toJS() as Record<string, unknown>;
  return JSON.stringify({ ...now, [list]: now[list] ?? [] }) === JSON.stringify({ ...before, [list]: left });
}

function withValue(data: unknown, path: readonly string[], value: SettingValue): unknown {
  const [name, ...rest] = path;
  if (name === undefined) return value;
  if (Array.isArray(data)) {
    const index = name === '-' ? data.length : Number(name);
    return [...data.slice(0, index), withValue(data[index] as unknown, rest, value), ...data.slice(index + 1)];
  }
  if (name === '-') return [withValue(null, rest, value)];
  const record = new Map(Object.entries((data ?? {}) as Record<string, unknown>));
  record.set(name, withValue(record.get(name), rest, value));
  return Object.fromEntries(record);
}

function cannot(source: SourceText, why: string): Failure {
  return new Failure(
    'bad-request',
    `${source.file} cannot be changed: ${why}.`,
    'Open it in an editor and make the change by hand.',
  );
}
