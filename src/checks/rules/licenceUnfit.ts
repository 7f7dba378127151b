import type { Judged } from '#core/assembled.ts';
import type { Place } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import { parseLicenceExpression } from '#notation/licences.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import kinds from '../knowledge/licenceKinds.json';
import { maskUnread } from '../maskUnread.ts';
import { proseOf } from '../proseOf.ts';

export const licenceUnfit = defineCheck({
  id: 'licence-unfit',
  title: 'Each licence suits what it is put on.',
  weight: 'tidy',
  audience: 'publisher',
  why: 'A licence that speaks of software leaves open what holds for a board, a drawing or a photo.',
  basis: 'the words of the licences; open source hardware definition 1.0',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    yield* softwareForOthers(judged);
    yield* onlySoftware(judged);
    yield* restrictedButOpen(judged);
  },
  examples: {
    passes: [
      {
        title: 'one licence each',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CERN-OHL-P-2.0\n  code: MIT\n  text: CC-BY-4.0\n',
          'guide.md': '# Night light\n\nThis is open hardware.\n\n## Fit the lamp\n\nSolder D1.\n',
        },
      },
      {
        title: 'a choice of two, one of which suits',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: MIT OR CERN-OHL-P-2.0\n  text: CC0-1.0\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
        },
      },
      {
        title: 'no commerce, and no claim of being open; a sensor that is open hardware itself',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CC-BY-NC-4.0\n  text: CC-BY-NC-4.0\n',
          'guide.md':
            '# Night light\n\nThe build tool is open source.\n\n## Fit the lamp\n\nSolder D1. Open hardware shops sell it.\n',
        },
      },
    ],
    fails: [
      {
        title: 'a software licence for hardware and text, a text licence for code',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: MIT\n  code: CC-BY-4.0\n  text: CC-BY-4.0\n',
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
        },
        expect: [
          { file: 'twicebuilt.yaml', line: 3, words: 'MIT' },
          { file: 'twicebuilt.yaml', line: 4, words: 'CC-BY-4.0' },
        ],
      },
      {
        title: 'a folder of text with a licence for software',
        files: {
          'guide.md': '# Night light\n\n## Fit the lamp\n\nSolder D1.\n',
          LICENSE: 'SPDX-License-Identifier: MIT\n',
        },
        expect: [{ file: 'LICENSE', words: 'MIT' }],
      },
      {
        title: 'open hardware that nobody may sell',
        files: {
          'twicebuilt.yaml': 'format: 1\nlicences:\n  hardware: CC-BY-NC-SA-4.0\n  text: CC-BY-4.0\n',
          'guide.md': '# Night light\n\nThis lamp is open source hardware.\n\n## Fit the lamp\n\nSolder D1.\n',
        },
        expect: [{ file: 'guide.md', line: 3, words: 'CC-BY-NC-SA-4.0' }],
      },
    ],
  },
});

type Class = 'hardware' | 'code' | 'text';

/** The settings' licence of a class; an expression that cannot be read names none. */
function idsOf({ build }: Judged, name: Class): string[] {
  const text = build.settings.licences[name];
  const read = text === null ? null : parseLicenceExpression(text);
  return read === null || 'strange' in read ? [] : read.licences.map(({ id }) => id);
}

function* softwareForOthers(judged: Judged): Iterable<FindingDraft> {
  const { places } = judged.build.settings;
  for (const name of ['hardware', 'text', 'code'] as const) {
    const ids = idsOf(judged, name);
    const unfit = name === 'code' ? isForContent : isForSoftware;
    if (ids.length === 0 || !ids.every(unfit)) continue;
    const suits = {
      hardware: 'CERN-OHL-P-2.0 or CERN-OHL-S-2.0',
      text: 'CC-BY-4.0 or CC0-1.0',
      code: 'MIT or Apache-2.0',
    };
    yield {
      subjects: [`licence:${name}`],
      sides: [places[`licences.${name}`] ?? places.licences ?? { kind: 'file', file: 'twicebuilt.yaml' }],
      message: `The licence of the ${name} is ${ids.join(', ')}, which was written for ${name === 'code' ? 'texts and pictures, not for programs' : 'software'}.`,
      consequence:
        name === 'code'
          ? 'It says nothing of source and binary, and cannot be combined with most licences of libraries.'
          : `It says nothing of ${name === 'text' ? 'texts and photos' : 'boards and making them'}; who builds on it has to guess.`,
      remedy: `Choose one that speaks of it, such as ${suits[name]}, if you hold the rights.`,
    };
  }
}

/** Files alone tell the licence, every one of them is for software, and there is no software. */
function* onlySoftware({ build }: Judged): Iterable<FindingDraft> {
  const ids = build.licences.map(({ spdx }) => spdx);
  const isNamed = Object.values(build.settings.licences).some((text) => text !== null);
  if (isNamed || build.sources.length > 0 || ids.length === 0) return;
  if (!ids.every((id) => id !== null && isForSoftware(id))) return;
  yield {
    subjects: ['build:licence'],
    mark: 'software',
    sides: build.licences.map(({ path }): Place => ({ kind: 'file', file: path })),
    message: `The only licence here is ${ids.join(', ')}, which was written for software; the folder holds text, pictures and parts.`,
    consequence: 'It says nothing of boards, texts and photos; who builds on it has to guess.',
    remedy: 'Add a licence each for hardware and text, such as CERN-OHL-P-2.0 and CC-BY-4.0, if you hold the rights.',
  };
}

function isForSoftware(id: string): boolean {
  return kinds.softwareOnly.includes(id);
}

function isForContent(id: string): boolean {
  return kinds.contentOnly.some((pattern) => new RegExp(pattern).test(id));
}

/** 'This lamp is open hardware', with a licence that forbids selling or changing. */
function* restrictedButOpen(judged: Judged): Iterable<FindingDraft> {
  const { build } = judged;
  const ids = new Set([...idsOf(judged, 'hardware'), ...build.licences.flatMap(({ spdx }) => spdx ?? [])]);
  const restricted = [...ids].filter((id) => kinds.restricted.some((pattern) => new RegExp(pattern).test(id)));
  if (restricted.length === 0) return;
  for (const source of proseOf(build)) {
    const claim = claimOfOpenness.exec(maskUnread(source));
    if (claim === null) continue;
    yield {
      subjects: ['licence:hardware'],
      mark: 'open',
      sides: [placeOf(source, [claim.index, claim.index + claim[0].length])],
      basis: 'read',
      message: `The text says ‘${claim[0].replace(/\s+/g, ' ')}’; ${restricted.join(' and ')} forbids selling or changing it.`,
      consequence: 'Somebody builds a workshop or a kit on a promise that the licence takes back.',
      remedy: 'Drop the word open, or choose a licence without NC and ND.',
    };
    return;
  }
}

const claimOfOpenness =
  /\b(?:this|the|our|my)\s+(?:\p{L}+\s+){1,3}?(?:is|are)\s+(?:(?:fully|completely|an?)\s+){0,2}open[- ](?:source )?hardware\b/iu;
