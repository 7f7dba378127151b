import type { CreditsBlock, LicencesBlock, RevisionBlock } from '#guide/guide.ts';
import { listed } from '#guide/listed.ts';
import { element, type Html } from '../shared/html.ts';
import { renderSection } from './renderSection.ts';

export function renderLicences(block: LicencesBlock): Html {
  return renderSection(
    { id: block.id, heading: 'What you may do with it' },
    ...(block.licences.length === 0
      ? [element('p', {}, 'The maker names no licence. Ask before you copy it, change it or sell it.')]
      : block.licences.map((licence) =>
          element('p', {}, `${covered[licence.covers]}: `, element('span', { class: 'refs' }, licence.spdx), '.'),
        )),
  );
}

const covered: Readonly<Record<LicencesBlock['licences'][number]['covers'], string>> = {
  hardware: 'The hardware is under',
  code: 'The code is under',
  text: 'Text and pictures are under',
  folder: 'The licence file that comes with the build is',
};

/** Who made it, and which state of it the page tells of. */
export function renderFooter(
  credits: CreditsBlock | null,
  revision: RevisionBlock | null,
  report: string | null,
): Html {
  return element(
    'footer',
    {},
    credits && element('p', { id: credits.id }, `Made and written by ${listed(credits.authors)}.`),
    revision &&
      element(
        'p',
        { id: revision.id },
        revision.revision === null ? 'As it was on ' : `Revision ${revision.revision}, as it was on `,
        element('time', { datetime: revision.asOf }, revision.asOf),
        '.',
      ),
    report !== null && element('p', {}, element('a', { href: report }, 'Report an error in this guide'), '.'),
  );
}
