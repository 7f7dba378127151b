import type { Span } from '#core/place.ts';
import { isCredential, secretKindOf } from './judgeCredential.ts';
import type { FoundSecret } from './shapesIn.ts';

/**
 * Credentials in a text that no grammar reads: `NAME=value`, `name: value`, `"name": "value"`, and in code
 * `name = "value"` or `#define NAME "value"`. With `bare` false a value needs quotes, as in code.
 */
export function assignmentsIn(text: string, offset = 0, bare = true): FoundSecret[] {
  const quoted = [...text.matchAll(quotedPattern)];
  const plain = bare ? [...text.matchAll(barePattern)] : [];
  const flags = [...text.matchAll(flagPattern)];
  return [...quoted, ...plain, ...flags].flatMap((match) => {
    const { name = '', value = '' } = match.groups ?? {};
    const kind = secretKindOf(name);
    if (kind === null || !isCredential(value, kind)) return [];
    const [start, end] = match.indices?.groups?.value ?? [0, 0];
    const span: Span = [offset + start, offset + end];
    return [{ kind, name, span }];
  });
}

const name = '(?<name>[A-Za-z_][\\w.-]{0,80})';

const quotedPattern = new RegExp(
  `${name}["']?(?:\\s?\\[\\w*\\])?(?:\\s{0,20}(?::?=>?|:)\\s{0,20}|\\s{1,20})(?:[A-Za-z_]\\w*\\(\\s*)?(?<quote>["'])(?<value>(?:(?!\\k<quote>)[^\\\\\\r\\n]|\\\\.){1,200})\\k<quote>`,
  'gd',
);

/** A compiler's flag that defines a name: `-DPASS=\\"word\\"`, quoted for one shell or another. */
const flagPattern = new RegExp(`-D\\s*${name}=[\\\\"']*(?<value>[^\\\\"'\\s]{1,200})`, 'gd');

/** A line of an environment or settings file. A value that opens with a quote is for the other pattern. */
const barePattern = new RegExp(
  `^[ \\t]*(?:export[ \\t]+|-[ \\t]+)?["']?${name}["']?[ \\t]*[=:][ \\t]*(?<value>[^\\s"'#;,{}\\[\\]()<>|&][^\\r\\n#;]{0,200}?)[ \\t]*(?:[#;].*)?$`,
  'gdm',
);
