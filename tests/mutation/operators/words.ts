import { factsOf, guideLines, spotsOf, stepsOf } from '../guideOf.ts';
import { type Draft, type Operator, type Spot, word } from '../mutant.ts';
import { linesIn } from '../project.ts';
import { partRows } from './parts.ts';
import { logLines } from './steps.ts';

const bands = ['black', 'brown', 'red', 'orange', 'yellow', 'green', 'blue', 'violet', 'grey', 'white'];
const reading =
  /\b((?:black|brown|red|orange|yellow|green|blue|violet|grey|white), \w+(?:, \w+)?), (\w+), (gold|brown)\b/;

/** One band is read wrongly in the step or the caption. */
export const bandChanged: Operator = (project) =>
  guideLines(project).flatMap(({ file, line, words }): Draft[] => {
    const [all = '', first = '', power = '', tolerance = ''] = reading.exec(words) ?? [];
    const at = bands.indexOf(power);
    if (all === '' || at < 0) return [];
    const other = bands[at === 1 ? 2 : at - 1] ?? 'red';
    const from = (words.match(/\b(R\d)\b/g) ?? []) as string[];
    return [
      {
        title: `${all} becomes ${first}, ${other}, ${tolerance}`,
        changes: [word(file, line, words.replace(all, `${first}, ${other}, ${tolerance}`))],
        at: [{ file, line }],
        reaches: (partRows(project)?.rows ?? [])
          .filter(({ refs }) => from.some((ref) => refs.includes(ref)))
          .map(({ row }) => row),
        why: 'A builder sorts the resistors by their bands and fits the wrong one.',
      },
    ];
  });

/** The value in a sentence or a caption is an old one. */
export const valueInTextChanged: Operator = (project) => {
  const rows = partRows(project)?.rows ?? [];
  return guideLines(project).flatMap(({ file, line, words }): Draft[] => {
    const [said = '', n = '', unit = ''] = /(?<![<>±] )\b(\d+(?:\.\d+)?) (k?Ω)(?= ?[).,:"])/.exec(words) ?? [];
    const ref = [...words.slice(0, words.indexOf(said)).matchAll(/\bR\d+\b/g)].at(-1)?.[0];
    const row = rows.find(
      ({ refs, row: { words: own } }) => ref !== undefined && refs.includes(ref) && own.includes(`${n} ${unit}`),
    );
    if (said === '' || row === undefined || words.startsWith('|') || words.startsWith('- ')) return [];
    const other = `${n.startsWith('1') ? n.replace('1', '2') : n.replace(/^\d/, '1')} ${unit}`;
    return [
      {
        title: `the text says ${other} of ${ref}`,
        changes: [word(file, line, words.replace(said, other))],
        at: [{ file, line }],
        reaches: [row.row],
        why: 'A builder reads two values and cannot tell which is right.',
      },
    ];
  });
};

/** The mark that is printed on a capacitor is another one. */
export const printedCodeChanged: Operator = (project) =>
  guideLines(project).flatMap(({ file, line, words }): Draft[] => {
    const [said = ''] = /printed 10[34]/.exec(words) ?? [];
    if (said === '') return [];
    const other = said.endsWith('3') ? 'printed 104' : 'printed 102';
    return [
      {
        title: `${said} becomes ${other}`,
        changes: [word(file, line, words.replace(said, other))],
        at: [{ file, line }],
        reaches: (partRows(project)?.rows ?? [])
          .filter(({ refs }) => refs.some((ref) => words.includes(ref)))
          .map(({ row }) => row),
        why: 'A builder fits the wrong capacitor.',
      },
    ];
  });

const hours: Readonly<Record<string, string>> = {
  'one hour and': 'four hours and',
  'two and a half hours': 'nine hours',
  'Two hours at the table': 'Nine hours at the table',
  'about three hours': 'about nine hours',
  'Three hours': 'Nine hours',
  'takes four hours': 'takes eleven hours',
  'Four hours': 'Eleven hours',
  'about five hours': 'about fourteen hours',
};

/** The time that the text promises is an old one. */
export const timeOutdated: Operator = (project) =>
  guideLines(project).flatMap(({ file, line, words }): Draft[] =>
    Object.entries(hours)
      .filter(([said]) => words.includes(said))
      .slice(0, 1)
      .map(([said, other]) => ({
        title: `${said} becomes ${other}`,
        changes: [word(file, line, words.replace(said, other))],
        at: [{ file, line }],
        reaches: stepsOf(project).flatMap((step) => factsOf(step, 'time')),
        why: 'A builder plans an evening for what takes two.',
      })),
  );

/** A step's time has a nought too many: the sum is no longer what the text promises. */
export const stepTimeChanged: Operator = (project) => {
  const promised = guideLines(project).filter(({ words }) => Object.keys(hours).some((said) => words.includes(said)));
  if (promised.length === 0) return [];
  return stepsOf(project).flatMap((step) =>
    factsOf(step, 'time').flatMap((fact): Draft[] => {
      if (!/^[2-9]\d min$/.test(fact.value)) return [];
      return [
        {
          title: `${step.heading} takes ${fact.value.replace(' min', '0 min')}`,
          changes: [word(fact.file, fact.line, fact.words.replace(' min', '0 min'))],
          at: [fact, ...promised],
          why: 'A builder plans an evening for what takes two.',
        },
      ];
    }),
  );
};

/** A link to a section has the section's old name. */
export const linkBroken: Operator = (project) =>
  guideLines(project).flatMap(({ file, line, words }): Draft[] => {
    const [link = ''] = /\]\(#[^)]+\)/.exec(words) ?? [];
    if (link === '') return [];
    return ['](#faults)', '](#step-9)', `${link.slice(0, -2)})`].map((other) => ({
      title: `${link} becomes ${other}`,
      changes: [word(file, line, words.replace(link, other))],
      at: [{ file, line }],
      why: 'A builder with a wrong reading is sent nowhere.',
    }));
  });

/** A heading is renamed that a link or the log speaks of. */
export const headingRenamed: Operator = (project) => {
  const linked = guideLines(project).flatMap(({ file, line, words }) => {
    const slug = /\]\(#([^)]+)\)/.exec(words)?.[1];
    const heading = guideLines(project).find(({ words: head }) => head.startsWith('## ') && slugOf(head) === slug);
    return slug === undefined || heading === undefined ? [] : [{ heading, at: [{ file, line }] }];
  });
  const logged = stepsOf(project).flatMap((step) => {
    const at: Spot[] = logLines(project, step);
    const words = linesIn(project, step.file)[step.first - 1] ?? '';
    return at.length === 0 ? [] : [{ heading: { file: step.file, line: step.first, words }, at }];
  });
  return [...linked, ...logged].map(({ heading, at }) => ({
    title: `‘${heading.words}’ has another name`,
    changes: [word(heading.file, heading.line, `${/^#+/.exec(heading.words)?.[0] ?? '##'} Second thoughts`)],
    at,
    reaches: [heading],
    why: 'What speaks of the section leads nowhere.',
  }));
};

function slugOf(heading: string): string {
  return heading
    .replace(/^#+ /, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-');
}

const polarWords =
  /longer lead|long lead|shorter one|flat side|stripe|the anode|the cathode|notch|its ring|black ring/i;

/** Which way round a part goes is said nowhere any more. */
export const orientationDropped: Operator = (project) => {
  const polar = (partRows(project)?.rows ?? []).filter(
    ({ refs, row }) => /^(?:D|C|LED)\d/.test(refs[0] ?? '') && /LED,|Electrolytic|Diode/i.test(row.words),
  );
  return polar.flatMap(({ refs, row }): Draft[] => {
    const fitting = stepsOf(project).find((step) =>
      factsOf(step, 'parts').some(({ value }) => new RegExp(`\\b${refs[0]}\\b`).test(value)),
    );
    const said = fitting?.prose.filter(({ words }) => polarWords.test(words)) ?? [];
    if (fitting === undefined || said.length === 0) return [];
    // What the list itself tells of the mark is still told.
    if (polarWords.test(row.words) || /ring marks/i.test(row.words)) return [];
    const lines = guideLines(project).filter(({ words }) => polarWords.test(words) && !words.startsWith('#'));
    const files = [...new Set(lines.map(({ file }) => file))];
    return [
      {
        title: `nobody says which way round ${refs.join(', ')} goes`,
        changes: files.map((file) => ({
          file,
          words: new Map(
            lines.filter((one) => one.file === file).map(({ line, words }) => [line, withoutPolarWords(words)]),
          ),
        })),
        at: [row, ...spotsOf(fitting)],
        reaches: [...(partRows(project)?.rows.map((one) => one.row) ?? []), ...stepsOf(project).flatMap(spotsOf)],
        why: 'A builder fits it the wrong way round one time in two.',
      },
    ];
  });
};

function withoutPolarWords(words: string): string {
  if (words.startsWith('|')) return words.replace(polarWords, 'joint');
  const label = /^- [A-Z][a-z]+: /.exec(words)?.[0] ?? '';
  const kept = words
    .slice(label.length)
    .split(/(?<=[.:]) /)
    .filter((sentence) => !polarWords.test(sentence));
  return kept.length === 0 ? `${label}${label === '' ? '' : 'as in the picture'}` : label + kept.join(' ');
}
