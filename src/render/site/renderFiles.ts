import type { FilesBlock, PublishedFile } from '#guide/guide.ts';
import { withStop } from '#guide/withStop.ts';
import { element, type Html } from '../shared/html.ts';
import { relativeUrl } from '../shared/safeUrl.ts';
import { renderSection } from './renderSection.ts';

/** Where a file that comes with the guide lies in the published folder. */
export function filePath(path: string): string {
  const safe = path.split('/').filter((part) => part !== '' && part !== '.' && part !== '..');
  return ['files', ...safe].join('/');
}

/** The files of the build, code apart: what each is for, how large, and where to take it. */
export function renderFiles(block: FilesBlock): Html {
  return renderSection(
    { id: block.id, heading: 'Files' },
    element('ul', { class: 'tools' }, ...block.rows.map(renderFile)),
  );
}

function renderFile(file: PublishedFile): Html {
  const name = element('code', {}, file.path);
  return element(
    'li',
    {},
    element(
      'span',
      { class: 'name' },
      file.withheld === null ? element('a', { href: relativeUrl(filePath(file.path)), download: true }, name) : name,
    ),
    element(
      'span',
      { class: 'detail' },
      file.withheld === null
        ? `${purposes[file.purpose]}, ${sizeOf(file.bytes)}`
        : withStop(`Not given out: ${file.withheld}`),
    ),
  );
}

const purposes: Readonly<Record<PublishedFile['purpose'], string>> = {
  design: 'Design file',
  licence: 'Licence text',
};

/** A size that a person can judge: `3.4 kB`. */
function sizeOf(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  const [size, unit] = bytes < 1e6 ? [bytes / 1e3, 'kB'] : [bytes / 1e6, 'MB'];
  return `${size < 10 ? size.toFixed(1) : Math.round(size)} ${unit}`;
}
