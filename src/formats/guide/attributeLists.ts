import type { Inline } from '#core/text.ts';

const attribute = /(?:[#.][A-Za-z_-][\w:-]*|[A-Za-z_][\w:-]*=(?:"[^"]*"|'[^']*'|[^\s"'{}]+))/.source;
const list = `\\{:?\\s*${attribute}(?:\\s+${attribute})*\\s*\\}|\\{:\\s*[A-Za-z][\\w-]*\\s*\\}`;
const atStart = new RegExp(`^[ \\t]?(?:${list})`);
const atEnd = new RegExp(`\\s*(?:${list})\\s*$`);

/**
 * Drops the attribute lists that site generators allow after a link, a picture or a whole block, such as
 * `{ .button }` or `{: #id }`: they are no words of the text.
 */
export function withoutAttributeLists(nodes: readonly Inline[]): Inline[] {
  return nodes.flatMap((node, index): Inline[] => {
    if (node.kind !== 'text') return [node];
    const before = nodes[index - 1];
    let value = node.value;
    if (before !== undefined && before.kind !== 'text' && before.kind !== 'break') value = value.replace(atStart, '');
    if (index === nodes.length - 1) value = value.replace(atEnd, '');
    return value === '' ? [] : [{ kind: 'text', value }];
  });
}
