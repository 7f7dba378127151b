import type { Publication } from '../publish.ts';
import { findingDocument } from './findingDocument.ts';
import { problemDocument } from './placeDocument.ts';

/** JSON output of `publish`. */
export function publishDocument(publication: Publication): Record<string, unknown> {
  const { verdict, outputs, cleaned, withheld, leftOut, findings } = publication;
  return {
    format: 1,
    verdict,
    outputs,
    cleaned,
    withheld,
    leftOut: leftOut.map(problemDocument),
    findings: findings.map(findingDocument),
  };
}
