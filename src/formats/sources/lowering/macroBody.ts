import type { Item, Value } from './program.ts';

/**
 * What the body of an object-like macro stands for. Grammars leave it as raw text, since the language sees
 * tokens only; this reads one number, name, text, cast, list or wrapping call, and gives `other` for the rest.
 */
export function macroBody(text: string, offset: number): Value {
  const tokens = tokensOf(text, offset);
  const reader = { tokens, next: 0, depth: 0 };
  const value = readValue(reader);
  const whole: Value = { kind: 'other', span: [offset, offset + text.length] };
  return value !== null && reader.next === tokens.length ? value : whole;
}

interface Token {
  readonly kind: 'number' | 'name' | 'text' | 'sign';
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

interface Reader {
  readonly tokens: readonly Token[];
  next: number;
  depth: number;
}

const tokenPattern =
  /\\\r?\n|\/\*[\s\S]*?\*\/|\/\/.*|(?<text>(?:u8|[uUL])?"(?:[^"\\]|\\.)*")|(?<number>\.?\d(?:[eEpP][+-]|[\w.'])*)|(?<name>[A-Za-z_]\w*(?:\s*::\s*[A-Za-z_]\w*)*)|(?<sign>[^\s])/g;

const deepest = 24;

function tokensOf(text: string, offset: number): Token[] {
  return [...text.matchAll(tokenPattern)].flatMap((match) => {
    const kind = (['text', 'number', 'name', 'sign'] as const).find((name) => match.groups?.[name] !== undefined);
    return kind
      ? [{ kind, text: match[0], start: offset + match.index, end: offset + match.index + match[0].length }]
      : [];
  });
}

function readValue(reader: Reader): Value | null {
  const token = reader.tokens[reader.next];
  if (!token || ++reader.depth > deepest) return null;
  reader.next++;
  switch (token.kind) {
    case 'number':
      return { kind: 'number', text: token.text, span: [token.start, token.end] };
    case 'text':
      return textValue(token);
    case 'name':
      return readNamed(reader, token);
    case 'sign':
      return readSigned(reader, token);
  }
}

function textValue(token: Token): Value {
  const open = token.text.indexOf('"') + 1;
  return { kind: 'text', text: token.text.slice(open, -1), span: [token.start + open, token.end - 1] };
}

/** A name, or a call that only wraps its one argument, such as `F("text")`. */
function readNamed(reader: Reader, token: Token): Value | null {
  if (reader.tokens[reader.next]?.text !== '(') {
    const path = token.text.split('::').map((step) => step.trim());
    return { kind: 'name', path, written: path.join('::'), span: [token.start, token.end] };
  }
  reader.next++;
  const inner = readValue(reader);
  return inner && take(reader, ')') ? inner : null;
}

function readSigned(reader: Reader, token: Token): Value | null {
  if (token.text === '-') {
    const inner = readValue(reader);
    return inner?.kind === 'number'
      ? { kind: 'number', text: `-${inner.text}`, span: [token.start, inner.span[1]] }
      : null;
  }
  if (token.text === '{') return readList(reader, token);
  if (token.text !== '(') return null;
  const inner = readValue(reader);
  if (!inner || !take(reader, ')')) return null;
  const after = reader.tokens[reader.next];
  // `(gpio_num_t)5` and `(uint8_t)LED` are casts.
  return inner.kind === 'name' && after && after.text !== ')' && after.text !== ',' && after.text !== '}'
    ? readValue(reader)
    : inner;
}

function readList(reader: Reader, open: Token): Value | null {
  const items: Item[] = [];
  while (reader.tokens[reader.next]?.text !== '}') {
    const value = readValue(reader);
    if (!value) return null;
    reader.depth--;
    items.push({ name: null, value });
    if (reader.tokens[reader.next]?.text === ',') reader.next++;
    else if (reader.tokens[reader.next]?.text !== '}') return null;
  }
  const close = reader.tokens[reader.next++];
  return { kind: 'list', items, span: [open.start, close?.end ?? open.end] };
}

function take(reader: Reader, sign: string): boolean {
  if (reader.tokens[reader.next]?.text !== sign) return false;
  reader.next++;
  return true;
}
