import type { CodeFileBlock } from '#guide/guide.ts';
import { element, type Html } from '../shared/html.ts';
import { relativeUrl } from '../shared/safeUrl.ts';
import { renderSection } from './renderSection.ts';

/** Longer listings are folded away until asked for. */
const openLines = 40;

/** Where a source file lies in the published folder. */
export function codePath(file: CodeFileBlock): string {
  const safe = file.path.split('/').filter((part) => part !== '' && part !== '.' && part !== '..');
  return ['code', ...safe].join('/');
}

/** All source files, each as a listing and as a file to take away. */
export function renderCode(files: readonly CodeFileBlock[]): Html {
  return renderSection({ id: 'code', heading: 'Code' }, ...files.map(renderFile));
}

function renderFile(file: CodeFileBlock): Html {
  const lines = file.text.trimEnd().split('\n').length;
  return element(
    'section',
    { id: file.id, class: 'file', 'aria-labelledby': `${file.id}.heading` },
    element('h3', { id: `${file.id}.heading` }, element('code', {}, file.path)),
    element(
      'p',
      {},
      element('a', { href: relativeUrl(codePath(file)), download: true }, 'Take this file'),
      `, ${lines} ${lines === 1 ? 'line' : 'lines'}.`,
      file.withheld > 0 && ` ${withheldSentence(file.withheld)}`,
    ),
    element(
      'details',
      { open: lines <= openLines },
      element('summary', {}, 'Listing'),
      element('pre', { tabindex: 0 }, element('code', {}, file.text)),
    ),
  );
}

function withheldSentence(count: number): string {
  return count === 1
    ? 'One credential has been taken out; put your own in its place.'
    : `${count} credentials have been taken out; put your own in their place.`;
}
