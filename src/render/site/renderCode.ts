import type { CodeFileBlock } from '#guide/guide.ts';
import { element, type Html } from '../shared/html.ts';
import { fragmentUrl, relativeUrl } from '../shared/safeUrl.ts';
import { highlight } from './highlight.ts';
import { renderSection } from './renderSection.ts';

/** The page that shows all source files. */
export const codePage = 'code.html';

/** Where a source file lies in the published folder. */
export function codePath(file: CodeFileBlock): string {
  const safe = file.path.split('/').filter((part) => part !== '' && part !== '.' && part !== '..');
  return ['code', ...safe].join('/');
}

/** The source files as a list: each to look at on the page of the code, or to take away. */
export function renderCode(files: readonly CodeFileBlock[]): Html {
  return renderSection(
    { id: 'code', heading: 'Code' },
    element(
      'ul',
      { class: 'tools' },
      ...files.map((file) =>
        element(
          'li',
          { id: file.id },
          element(
            'span',
            { class: 'name' },
            element('a', { href: `${codePage}${fragmentUrl(file.id)}` }, element('code', {}, file.path)),
          ),
          element('span', { class: 'detail' }, ...aboutFile(file)),
        ),
      ),
    ),
  );
}

/** The source files themselves. */
export function renderListings(files: readonly CodeFileBlock[]): Html[] {
  return files.map((file) =>
    element(
      'section',
      { id: file.id, class: 'section file', 'aria-labelledby': `${file.id}.heading` },
      element('h2', { id: `${file.id}.heading` }, element('code', {}, file.path)),
      element(
        'div',
        { class: 'content' },
        element('p', {}, ...aboutFile(file)),
        element('pre', { tabindex: 0 }, element('code', {}, ...highlight(file.text, file.language, file.path))),
      ),
    ),
  );
}

function aboutFile(file: CodeFileBlock) {
  const lines = file.text.trimEnd().split('\n').length;
  return [
    element('a', { href: relativeUrl(codePath(file)), download: true }, 'Take this file'),
    `, ${lines} ${lines === 1 ? 'line' : 'lines'}.`,
    file.withheld > 0 && ` ${withheldSentence(file.withheld)}`,
  ];
}

function withheldSentence(count: number): string {
  return count === 1
    ? 'One credential has been taken out; put your own in its place.'
    : `${count} credentials have been taken out; put your own in their place.`;
}
