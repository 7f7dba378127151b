import path from 'node:path';
import types from './contentTypes.json';

const byEnding: Readonly<Record<string, string>> = types.byEnding;

/** The media type of a file by its ending; bytes without meaning for an unknown one. */
export function contentType(file: string): string {
  return byEnding[path.extname(file).slice(1).toLowerCase()] ?? 'application/octet-stream';
}
