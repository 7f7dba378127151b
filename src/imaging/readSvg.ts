import type { Field, MetadataBlock } from './metadataBlock.ts';
import { readXmp } from './readXmp.ts';

/** Attributes and elements of a drawing that drawing programs use for names, paths and rights (common practice). */
const telling = new Set(['docname', 'export-filename', 'absref', 'creator', 'title', 'publisher', 'contributor']);

/** What an SVG drawing says of its maker besides the drawing: its metadata, comments and stored paths. */
export function readSvg(text: string): MetadataBlock[] {
  const comments = [...text.matchAll(/<!--([^<]*)-->/g)].map(([, value = '']) => ({ name: 'Comment', value }));
  const fields: Field[] = readXmp(text).filter(({ name, value }) => telling.has(name) && value !== '');
  return [...comments, ...fields].map((field) => ({ kind: 'field', field }));
}
