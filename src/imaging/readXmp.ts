import type { Field } from './metadataBlock.ts';

/** Containers of RDF: what they hold belongs to the property round them. */
const wrappers = new Set(['xmpmeta', 'RDF', 'Description', 'Seq', 'Bag', 'Alt', 'li']);

/**
 * Properties of an XMP packet by their names without prefix, in order. A property that holds structures is named
 * too, once for each value inside it. Reads broken packets as far as they go.
 */
export function readXmp(text: string): Field[] {
  const fields: Field[] = [];
  const open: string[] = [];
  // Neither part can run past a '<', so that no text makes this slow.
  for (const match of text.matchAll(/<(\/?)(?:[\w.-]+:)?([\w.-]+)([^<>]*)>([^<]*)/g)) {
    const [, closing, name = '', attributes = '', content = ''] = match;
    if (closing) open.length = Math.max(0, open.lastIndexOf(name));
    else open.push(name);
    const outer = open.filter((property) => !wrappers.has(property));
    for (const field of attributeFields(attributes)) fields.push(field, ...holders(outer, field.value));
    if (attributes.endsWith('/')) open.pop();
    else if (content.trim() !== '') fields.push(...holders(outer, content.trim()));
  }
  return fields;
}

function holders(properties: readonly string[], value: string): Field[] {
  return properties.map((name) => ({ name, value }));
}

function attributeFields(attributes: string): Field[] {
  return [...attributes.matchAll(/(?:([\w.-]+):)?([\w.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)]
    .filter(([, prefix]) => prefix !== 'xmlns' && prefix !== 'xml' && prefix !== 'rdf')
    .map(([, , name = '', double, single]) => ({ name, value: (double ?? single ?? '').trim() }));
}
