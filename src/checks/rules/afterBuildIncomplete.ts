import type { Judged } from '#core/assembled.ts';
import type { Place } from '#core/place.ts';
import { defineCheck } from '../defineCheck.ts';
import topics from '../knowledge/guideTopics.json';
import { listed } from '../say.ts';
import { topicsSaid } from '../topicsSaid.ts';
import { isWrittenOut } from '../writtenGuide.ts';

export const afterBuildIncomplete = defineCheck({
  id: 'after-build-incomplete',
  title: 'The guide goes on after the last step: use, calibration, performance, trouble, care, disposal.',
  weight: 'slows',
  audience: 'publisher',
  words: 'English',
  why: 'Most questions to a maker come after the last step.',
  basis:
    'IEC/IEEE 82079-1 and DIN SPEC 3105-1, in substance: operation, maintenance and end of life belong to the documentation',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    const { build } = judged;
    if (!isWrittenOut(build)) return;
    const lacking = topics.after.filter((entry) => isAsked(judged, entry) && !isSaid(judged, entry));
    const last = build.instructions.sections.at(-1);
    if (lacking.length === 0 || last === undefined) return;
    const side: Place = last.place;
    const isGrave = lacking.some(({ topic }) => topic === 'use' || topic === 'trouble' || topic === 'calibration');
    yield {
      subjects: ['build:after'],
      sides: [side],
      weight: isGrave ? 'slows' : 'tidy',
      message: `The guide does not say ${listed(
        lacking.map(({ says }) => says),
        9,
      )}.`,
      consequence: 'A builder with a finished thing has to find out alone, or ask.',
      remedy: 'Add a short section for each after the last step.',
    };
  },
  examples: {
    passes: [
      {
        title: 'a short section each',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n\n## Using it\n\nPress S1. The lamp draws 20 mA.\n\n## When it does not work\n\nTurn D1 round.\n\n## Care and disposal\n\nWipe it. Take it to a collection point for electronics.\n',
        },
      },
      {
        title: 'a page that has only begun',
        files: { 'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n' },
      },
    ],
    fails: [
      {
        title: 'the guide ends with the lid',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\nSolder D1.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'how to use it' }],
      },
      {
        title: 'scales that nobody zeroes',
        files: {
          'guide.md':
            '# Scales\n\n## Fit the cell\n\nSolder it.\n\n## Fit the switch\n\nSolder S1.\n\n## Close it\n\nPress the lid on.\n\n## Using it\n\nPress S1. It draws 20 mA.\n\n## When it does not work\n\nSolder again.\n\n## Care and disposal\n\nWipe it. Take it to a collection point for electronics.\n',
          'parts.csv': 'Reference,Quantity,Description\nLC1,1,Load cell 5 kg\nS1,1,Switch\n',
        },
        expect: [{ file: 'guide.md', line: 23, words: 'how to calibrate' }],
      },
    ],
  },
});

type Entry = (typeof topics.after)[number];

/** Only some sensors need calibrating; only a thing with current in it is waste of its own kind. */
function isAsked({ build, facts }: Judged, entry: Entry): boolean {
  const needs = 'needs' in entry ? (entry.needs ?? []) : [];
  if (needs.length > 0) {
    const parts = build.parts.map(({ description, mpn }) => `${description} ${mpn ?? ''}`).join('\n');
    return needs.some((word) => new RegExp(word, 'iu').test(parts));
  }
  if (entry.topic !== 'performance' && entry.topic !== 'disposal') return true;
  return build.connections.length + build.sources.length > 0 || facts.actions.some(({ kind }) => kind === 'solder');
}

function isSaid({ build }: Judged, entry: Entry): boolean {
  const headings = build.instructions.sections
    .filter(({ role }) => role !== 'title')
    .map(({ heading }) => heading)
    .join('\n');
  return topicsSaid(build).has(entry.topic) || entry.headings.some((word) => new RegExp(word, 'iu').test(headings));
}
