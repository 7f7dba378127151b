import type { Judged } from '#core/assembled.ts';
import type { Part } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { Section } from '#core/step.ts';
import { tokensOf } from '#notation/names.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { fittedRows, rowName } from '../partWords.ts';
import { listed, stepName } from '../say.ts';
import { type SpokenSentence, sentencesIn } from '../sentencesIn.ts';

export const countOpen = defineCheck({
  id: 'count-open',
  title: 'List and steps say how many of a part are meant.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: '‘A few’ is what the maker had at hand; a stranger orders too few, or looks for where the rest goes.',
  basis: 'common practice: a parts list counts pieces, and a step says how many it takes',
  needs: { subject: ['steps'], witnesses: [] },
  *run(judged) {
    yield* inList(judged);
    for (const section of judged.build.instructions.sections.filter(({ role }) => role === 'step')) {
      yield* inStep(judged, section);
    }
    yield* ofSpares(judged);
  },
  examples: {
    passes: [
      {
        title: 'counts, things that no one counts, and a header whose pins are told',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 4 × M3 screw\n- some hook-up wire\n- a few drops of glue\n- 2 × pin header 1x8\n- about 30 cm of tape\n- 2 (+1) switches\n\n## Fit it\n\nSolder the first two switches. Solder some wire to each. Take the screws and drive them. Drive a few turns by hand.\n',
        },
      },
      {
        title: 'a list with a column of quantities',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nSolder all headers. A few screws may be left over.\n',
          'parts.csv': 'Quantity,Description\n2,2x4 pin header\n8,M3 screw\n1,Lamp\n',
        },
      },
    ],
    fails: [
      {
        title: 'rows that count in words or leave open what a figure counts',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × lamp\n- a few M3 screws\n- 2x4 pin header for the lamp\n- 6 - 8 magnets\n\n## Fit it\n\nSolder the lamp.\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'how many' }],
      },
      {
        title: 'in steps: some of the switches; spacers of which two are spare',
        files: {
          'guide.md':
            '# Lamp\n\n## Parts\n\n- 1 × lamp\n- 12 × switch\n- 6 (+2) spacers\n\n## Fit the switches\n\nPress the first switches into the plate. Add more.\n\n## Fit the plate\n\nMount the spacers to the plate.\n',
        },
        expect: [
          { file: 'guide.md', line: 11, words: 'the first switches' },
          { file: 'guide.md', line: 15, words: '6 (+2)' },
        ],
      },
    ],
  },
});

const fewWords =
  /^\W*(?:an? (?:few|couple(?: of)?|handful of|bunch of|number of)|some|several|various|multiple)\s+(.+)/iu;
/** What is cut, poured or used up: nobody counts it. */
const uncounted =
  /\b(?:wires?|cables?|tape|glue|solder|flux|paste|tub(?:e|es|ing)|sleev\p{L}*|paint|oil|drops?|alcohol|cleaner|paper|towels?|foil|foam|filament|thread|string|velcro|heat-?shrink|cord|rope|felt|wax|resin|tools?|patience|time)\b/iu;

function* inList({ build }: Judged): Iterable<FindingDraft> {
  const open = fittedRows(build).flatMap((part) => {
    const how = isOpen(part);
    return how === null ? [] : [{ part, how }];
  });
  if (open.length === 0) return;
  yield {
    subjects: ['build:parts'],
    mark: 'count-open',
    sides: open.slice(0, 5).map(({ part }) => part.place),
    basis: 'read',
    message: `The list leaves open how many: ${listed(open.map(({ part, how }) => `${rowName(part)} (‘${how}’)`))}.`,
    consequence: 'A builder orders too few, or wonders where the rest goes.',
    remedy: 'Write the number of pieces first, then what one piece is, such as ‘2 × pin header, 1 × 4 pins’.',
  };
}

/** The words that leave the number open; null where the row counts. */
function isOpen(part: Part): string | null {
  const words = part.place.quote.replace(/^[\s*_>-]+/u, '');
  if (uncounted.test(part.description) || part.cells.quantity?.quote.trim() === '1') return null;
  const few = fewWords.exec(words);
  if (few !== null) return words.slice(0, words.length - (few[1] ?? '').length).trim();
  if (part.amount.is === 'unknown') {
    const isSize = /can be a size or a number/u.test(part.amount.lacking);
    return isSize ? (/^\d+ ?[x×] ?\d+/u.exec(part.description)?.[0] ?? null) : null;
  }
  const range = /^(?:\d+ ?[-–] ?\d+|\d+ to \d+|\d+ or \d+)(?= )/u.exec(words)?.[0];
  const isPieces =
    part.amount.is === 'confirmed' &&
    part.amount.claims.every(({ value }) => value.unit === 'pcs' && value.approximate);
  return isPieces && range !== undefined ? range : null;
}

const someOf =
  /\b(?:(?:the )?first|some|a few|several|a couple of|a number of)(?: of the| more)? (?!one|two|three|four|five|six|seven|eight|nine|ten|\d)((?:\p{L}+[- ])?\p{L}+s)\b/giu;
const addMore =
  /^\W*(?:now |then |next,? )?(?:add|fit|place|insert|put in|solder|mount) (?:some |a few |in )?more\W*$/iu;

/** An instruction about some of a part that the list counts. */
function* inStep(judged: Judged, section: Section): Iterable<FindingDraft> {
  const nouns = nounsOfMany(fittedRows(judged.build));
  const found = sentencesIn(section).flatMap((sentence) => phrasesIn(judged, sentence, nouns));
  const [first] = found;
  if (first === undefined) return;
  yield {
    subjects: [`step:${section.id}`],
    mark: 'some',
    sides: found.slice(0, 5).map(({ place }) => place),
    basis: 'read',
    message: `The step ${stepName(judged.build, section.id)} says ‘${first.words}’, and not how many or which.`,
    consequence: 'A builder does not know when to stop, nor where to begin.',
    remedy: 'Give the number, and name the places by what is printed there.',
  };
}

/** What rows are called of which there are several pieces. */
const nounsOfMany = rememberFor(
  (rows: readonly Part[]): ReadonlySet<string> =>
    new Set(
      rows
        .filter(({ description, amount }) => !uncounted.test(description) && isMany(amount))
        .flatMap(({ description }) => tokensOf(description.split(/[,(]/u)[0] ?? '').slice(-2)),
    ),
);

function isMany(amount: Part['amount']): boolean {
  return amount.is === 'unknown' || amount.claims.some(({ value }) => value.n > 1 && value.unit === 'pcs');
}

function phrasesIn(
  { facts }: Judged,
  sentence: SpokenSentence,
  nouns: ReadonlySet<string>,
): { words: string; place: TextPlace }[] {
  if (addMore.test(sentence.text)) return [{ words: sentence.text.trim().replace(/\.$/u, ''), place: sentence.place }];
  const matches = [...sentence.text.matchAll(someOf)];
  if (matches.length === 0) return [];
  const [from, to] = sentence.place.span;
  const isTold = facts.actions.some(
    ({ told, place }) =>
      told === 'do' && place.file === sentence.place.file && place.span[0] >= from && place.span[0] < to,
  );
  return matches.flatMap((match) => {
    const noun = tokensOf(match[1] ?? '').at(-1) ?? '';
    const place = sentence.placeOf(match.index, match.index + match[0].length);
    return isTold && nouns.has(noun) ? [{ words: match[0], place }] : [];
  });
}

/** Rows that count pieces for one use and, in brackets, more for another; the step that takes some says no number. */
function* ofSpares({ build, facts }: Judged): Iterable<FindingDraft> {
  for (const part of fittedRows(build)) {
    const split = /\b\d+ ?\(\+ ?\d+\)/u.exec(part.place.quote)?.[0];
    if (split === undefined) continue;
    const uses = facts.proposals.filter(({ label, about }) => label === 'parts' && about === `part:${part.id}`);
    for (const { step, places } of uses) {
      const section = build.instructions.sections.find(({ id }) => id === step);
      const [place] = places;
      if (section === undefined || place?.kind !== 'text') continue;
      const sentence = sentencesIn(section).find(
        (one) => one.place.span[0] <= place.span[0] && place.span[1] <= one.place.span[1],
      );
      const counts = /\d|\b(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve|each|every|all)\b/iu;
      if (sentence === undefined || counts.test(sentence.text)) continue;
      yield {
        subjects: [`part:${part.id}`, `step:${step}`],
        mark: 'spares',
        sides: [sentence.place, part.place],
        basis: 'read',
        message: `The list has ‘${split}’ of ${rowName(part)}; the step ${stepName(build, step)} does not say how many it takes.`,
        consequence: 'A builder does not know whether those in brackets go here.',
        remedy: 'Give the number in the step.',
      };
    }
  }
}
