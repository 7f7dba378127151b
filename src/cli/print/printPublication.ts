import type { Publication } from '#app/publish.ts';
import { count, safe, wrapped } from './layout.ts';
import { printFinding } from './printFinding.ts';
import { printHead } from './printJudgement.ts';

const worst = 5;

/** Verdict, the worst findings, what was cleaned and withheld, and where the guide is. */
export function printPublication(publication: Publication): string {
  const { findings, outputs, cleaned, withheld, leftOut } = publication;
  const parts = [
    printHead(publication),
    ...findings.slice(0, worst).map((finding, at) => printFinding(finding, at + 1, publication.judged.build)),
    findings.length > worst ? `${count(findings.length - worst, 'more finding')}; check --all shows every one.\n` : '',
    cleanedWords(cleaned),
    withheld.length === 0
      ? ''
      : wrapped(
          `Withheld from published code: ${withheld.map(({ file, line, kind }) => `${safe(file)} line ${line} (${kind})`).join(', ')}.`,
          '',
        ),
    ...leftOut.map(({ place, message, remedy }) =>
      wrapped(`Left out ${safe(place.file)}: ${safe(message)} ${safe(remedy)}`, ''),
    ),
    ...outputs.map(
      ({ kind, path, files, bytes }) =>
        `${title(kind)}: ${path}${kind === 'site' ? '/index.html' : ''} (${count(files, 'file')}, ${megabytes(bytes)})`,
    ),
  ];
  return `${parts.filter((part) => part !== '').join('\n')}\n`;
}

function cleanedWords(cleaned: Publication['cleaned']): string {
  if (cleaned.length === 0) return '';
  const fields = new Map<string, number>();
  for (const { removed } of cleaned) for (const field of removed) fields.set(field, (fields.get(field) ?? 0) + 1);
  const list = [...fields].sort(([a], [b]) => (a < b ? -1 : 1)).map(([field, n]) => `${field} (${n})`);
  const what = list.length === 0 ? 'nothing private was in them' : `taken out: ${list.join(', ')}`;
  return wrapped(`${count(cleaned.length, 'picture')} copied clean; ${what}.`, '');
}

function title(kind: string): string {
  return kind.charAt(0).toUpperCase() + kind.slice(1);
}

function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}
