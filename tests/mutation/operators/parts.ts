import { factsOf, guideLines, itemsOf, refsIn, stepsOf } from '../guideOf.ts';
import { type Draft, dropped, type Operator, type Spot, word } from '../mutant.ts';
import { linesIn, type Project } from '../project.ts';
import { type Cell, cellOf, type Row, type Table, tableOf, withCell } from '../tableOf.ts';

const refHeads = ['reference', 'ref', 'designator', 'referenz', 'part'];
const quantityHeads = ['quantity', 'qty', 'anzahl'];
const valueHeads = ['value', 'wert'];
const priceHeads = ['unit price', 'price', 'einzelpreis'];
const ratingHeads = ['rating', 'spezifikation'];

/** A row of the parts list with the references it has. */
interface PartRow {
  readonly row: Row;
  readonly refs: readonly string[];
}

function partsTable(project: Project): Table | null {
  const quantity = quantityHeads.find((head) => tableOf(project, project.parts, head) !== null);
  return quantity === undefined ? null : tableOf(project, project.parts, quantity);
}

export function partRows(project: Project): { table: Table; rows: PartRow[] } | null {
  const table = partsTable(project);
  if (table === null) return null;
  const rows = table.rows.map((row) => ({ row, refs: refsIn(cellOf(table, row, ...refHeads)?.text ?? '') }));
  return { table, rows };
}

/** Lines of facts that name a reference, and rows of the wiring that do. */
export function usesOf(project: Project, ref: string): Spot[] {
  const facts = stepsOf(project).flatMap((step) => [
    ...factsOf(step, 'parts').filter(({ value }) => refsIn(value).includes(ref)),
    ...[...factsOf(step, 'connects'), ...factsOf(step, 'removes'), ...factsOf(step, 'measure')].filter(({ value }) =>
      namesPinOf(value, ref),
    ),
  ]);
  const wires = linesIn(project, project.wiring).flatMap((words, index) =>
    namesPinOf(words, ref) && !words.startsWith('- ') ? [{ file: project.wiring, line: index + 1 }] : [],
  );
  return [...facts.map(({ file, line }) => ({ file, line })), ...wires];
}

function namesPinOf(words: string, ref: string): boolean {
  return new RegExp(`(?<![A-Za-z0-9])${ref}\\.`).test(words);
}

/** A row is forgotten: a step or a wire needs what nobody buys. */
export const partRowDropped: Operator = (project) => {
  const found = partRows(project);
  if (found === null) return bulletDropped(project);
  return found.rows.flatMap(({ row, refs }): Draft[] => {
    const uses = refs.flatMap((ref) => usesOf(project, ref));
    if (uses.length === 0) return [];
    return [
      {
        title: `the row of ${refs.join(', ')} is missing`,
        changes: [dropped(row.file, row.line)],
        at: uses,
        reaches: guideLines(project).filter(({ words }) => refs.some((ref) => words.includes(ref))),
        why: 'A builder halts at the step that takes the part.',
      },
    ];
  });
};

/** The same in a list of plain items: the step's item names it by words. */
function bulletDropped(project: Project): Draft[] {
  return bulletsTaken(project).map(({ line, words, uses }) => ({
    title: `the item ${words} is missing`,
    changes: [dropped(project.parts, line)],
    at: uses,
    why: 'A builder halts at the step that takes the part.',
  }));
}

interface TakenBullet {
  readonly line: number;
  readonly words: string;
  readonly uses: readonly Spot[];
}

/** Items of the list that a step takes: all words of the step's item begin words of the list's. */
function bulletsTaken(project: Project): TakenBullet[] {
  const taken = stepsOf(project).flatMap((step) =>
    factsOf(step, 'parts').flatMap((fact) => itemsOf(fact.value).map((item) => ({ fact, item }))),
  );
  return linesIn(project, project.parts).flatMap((words, index) => {
    if (!/^- \d/.test(words)) return [];
    const uses = taken.filter(({ item }) => isMeant(item, words)).map(({ fact }) => fact);
    return uses.length === 0 ? [] : [{ line: index + 1, words, uses: uses.map(({ file, line }) => ({ file, line })) }];
  });
}

function isMeant(item: string, listed: string): boolean {
  const stems = (text: string) => (text.toLowerCase().match(/\p{L}{3,}/gu) ?? []).map((one) => one.slice(0, 4));
  const has = new Set(stems(listed.replace('feet', 'foot')));
  return stems(item.replace(/×.*$/, '')).every((stem) => has.has(stem));
}

/** The quantity is another one than references and steps have. */
export const quantityChanged: Operator = (project) => {
  const found = partRows(project);
  if (found === null) {
    return bulletsTaken(project).flatMap(({ line, words, uses }) => {
      const n = Number(/^- (\d+)/.exec(words)?.[1] ?? 1);
      if (/^- \d+ c?m /.test(words)) return [];
      const fewer = words.replace(/^- \d+/, `- ${n > 1 ? n - 1 : n + 2}`);
      return [
        {
          title: `${words} becomes ${fewer}`,
          changes: [word(project.parts, line, fewer)],
          at: [{ file: project.parts, line }, ...uses],
          why: 'A builder has too few, or wonders where the rest belongs.',
        },
      ];
    });
  }
  return found.rows.flatMap(({ row, refs }): Draft[] => {
    const cell = cellOf(found.table, row, ...quantityHeads);
    if (cell === null || !/^\d+$/.test(cell.text) || refs.length === 0) return [];
    const n = Number(cell.text);
    return [
      {
        title: `${refs.join(', ')}: ${n} becomes ${n > 1 ? n - 1 : n + 1}`,
        changes: [word(row.file, row.line, withCell(row, cell, `${n > 1 ? n - 1 : n + 1}`))],
        at: [row],
        reaches: [...refs.flatMap((ref) => usesOf(project, ref)), ...linesOfCost(project)],
        why: 'A builder orders too few, or wonders where the rest belongs.',
      },
    ];
  });
};

/** A length loses a nought or takes a smaller unit: less than the steps cut off. */
export const lengthShrunk: Operator = (project) => {
  const found = partRows(project);
  const rows =
    found?.rows.flatMap(({ row, refs }) => {
      const cell = cellOf(found.table, row, ...quantityHeads);
      return cell === null || !/^[\d.]+ (?:cm|m)$/.test(cell.text) ? [] : [{ row, refs, cell }];
    }) ?? [];
  return rows.flatMap(({ row, refs, cell }): Draft[] =>
    [cell.text.replace(/c?m$/, 'mm'), `${Number.parseFloat(cell.text) / 10} ${cell.text.split(' ')[1]}`].map(
      (less) => ({
        title: `${refs.join(', ')}: ${cell.text} becomes ${less}`,
        changes: [word(row.file, row.line, withCell(row, cell, less))],
        at: [row, ...refs.flatMap((ref) => usesOf(project, ref))],
        why: 'A builder runs out of wire.',
      }),
    ),
  );
};

/** Lines of the guide that say a value or the bands of a reference. */
export function valueWitnesses(project: Project, refs: readonly string[], value: string): Spot[] {
  return guideLines(project).filter(
    ({ words }) =>
      refs.some((ref) => new RegExp(`(?<![A-Za-z0-9.])${ref}(?![0-9.])`).test(words)) &&
      (words.includes(value) ||
        /\b(?:black|brown|red|orange|yellow|violet|grey), (?:black|brown)/.test(words) ||
        /printed \d{3}/.test(words)),
  );
}

/** Pairs of a value and one that a maker had before, each of the usual series. */
const others: Readonly<Record<string, string>> = {
  '330 Ω': '470 Ω',
  '100 Ω': '220 Ω',
  '220 Ω': '330 Ω',
  '470 Ω': '1 kΩ',
  '1 kΩ': '2.2 kΩ',
  '4.7 kΩ': '10 kΩ',
  '10 kΩ': '4.7 kΩ',
  '68 kΩ': '47 kΩ',
  '100 kΩ': '220 kΩ',
  '100 nF': '10 nF',
  '10 nF': '100 nF',
  '10 µF': '47 µF',
  '470 µF': '220 µF',
  '1000 µF': '470 µF',
};

const otherUnits: Readonly<Record<string, string>> = { Ω: 'kΩ', kΩ: 'Ω', nF: 'µF', µF: 'nF' };

function valueRows(project: Project): { row: Row; refs: readonly string[]; cell: Cell; witnesses: Spot[] }[] {
  const found = partRows(project);
  return (
    found?.rows.flatMap(({ row, refs }) => {
      const cell = cellOf(found.table, row, ...valueHeads);
      // A list that stands in the guide is no second witness of its own row.
      const witnesses =
        cell === null ? [] : valueWitnesses(project, refs, cell.text).filter((spot) => !isOf(row, spot));
      return cell === null || witnesses.length === 0 ? [] : [{ row, refs, cell, witnesses }];
    }) ?? []
  );
}

function isOf(row: Row, { file, line }: Spot): boolean {
  return row.file === file && row.line === line;
}

function valueBecomes(project: Project, other: (value: string) => string | null): Draft[] {
  return valueRows(project).flatMap(({ row, refs, cell, witnesses }): Draft[] => {
    const to = other(cell.text);
    if (to === null) return [];
    return [
      {
        title: `${refs.join(', ')}: ${cell.text} becomes ${to}`,
        changes: [word(row.file, row.line, withCell(row, cell, to))],
        at: [row, ...witnesses],
        why: 'A builder buys by the list and reads another value in the step.',
      },
    ];
  });
}

/** The value is changed in the list alone. */
export const valueChanged: Operator = (project) => valueBecomes(project, (value) => others[value] ?? null);

/** The unit of a value is another one in the list alone. */
export const unitChanged: Operator = (project) =>
  valueBecomes(project, (value) => {
    const [n = '', unit = ''] = value.split(' ');
    const to = otherUnits[unit];
    return to === undefined ? null : `${n} ${to}`;
  });

/** Two rows of one kind have each other's values. */
export const valuesSwapped: Operator = (project) => {
  const rows = valueRows(project);
  return rows.flatMap((one, index) =>
    rows.slice(index + 1, index + 3).flatMap((other): Draft[] => {
      const sameKind = one.refs[0]?.[0] === other.refs[0]?.[0];
      if (!sameKind || one.cell.text === other.cell.text) return [];
      return [
        {
          title: `${one.refs.join(', ')} and ${other.refs.join(', ')} have each other's values`,
          changes: [
            {
              file: one.row.file,
              words: new Map([
                [one.row.line, withCell(one.row, one.cell, other.cell.text)],
                [other.row.line, withCell(other.row, other.cell, one.cell.text)],
              ]),
            },
          ],
          at: [one.row, other.row, ...one.witnesses, ...other.witnesses],
          why: 'A builder fits each part in the place of the other.',
        },
      ];
    }),
  );
};

/** A reference has another number in the list alone. */
export const renumberedInList: Operator = (project) => {
  const found = partRows(project);
  return (
    found?.rows.flatMap(({ row, refs }): Draft[] => {
      const ref = refs[0];
      const cell = cellOf(found.table, row, ...refHeads);
      const uses = ref === undefined ? [] : usesOf(project, ref);
      if (ref === undefined || refs.length !== 1 || cell === null || uses.length === 0) return [];
      const other = ref.replace(/\d+/, (n) => `${Number(n) + 40}`);
      return [
        {
          title: `${ref} is ${other} in the list`,
          changes: [word(row.file, row.line, withCell(row, cell, cell.text.replace(ref, other)))],
          at: [row, ...uses],
          reaches: guideLines(project).filter(({ words }) => words.includes(ref)),
          why: 'A builder looks for a part that the list does not hold.',
        },
      ];
    }) ?? []
  );
};

/** Lines of the guide that state what all parts cost. */
export function linesOfCost(project: Project): Spot[] {
  return guideLines(project).filter(({ words }) => /\d+\.\d\d EUR (?:on|for)/.test(words));
}

/** One price is another one: the sum in the text is wrong. */
export const priceChanged: Operator = (project) => {
  const found = partRows(project);
  const cost = linesOfCost(project);
  if (found === null || cost.length === 0) return [];
  return found.rows.flatMap(({ row, refs }): Draft[] => {
    const cell = cellOf(found.table, row, ...priceHeads);
    if (cell === null || Number.parseFloat(cell.text.replace(',', '.')) < 1) return [];
    return [
      {
        title: `${refs.join(', ')}: the price ${cell.text} becomes 1${cell.text}`,
        changes: [word(row.file, row.line, withCell(row, cell, `1${cell.text}`))],
        at: [row, ...cost],
        why: 'A builder pays more than the guide says.',
      },
    ];
  });
};

/** The sum in the text is an old one. */
export const costOutdated: Operator = (project) => {
  if (partRows(project) === null) return [];
  return linesOfCost(project).flatMap((spot) => {
    const words = linesIn(project, spot.file)[spot.line - 1] ?? '';
    return [(n: number) => n + 9.5, (n: number) => n * 10, (n: number) => n - 6].map((to) => ({
      title: 'the sum in the text is an old one',
      changes: [
        word(
          spot.file,
          spot.line,
          words.replace(/(\d+\.\d\d) EUR/, (_, n: string) => `${to(Number(n)).toFixed(2)} EUR`),
        ),
      ],
      at: [spot],
      reaches: [{ file: project.parts, line: 1 }],
      why: 'A builder pays another sum than the guide says.',
    }));
  });
};

/** What a part must stand is forgotten in one row. */
export const ratingDropped: Operator = (project) => {
  const found = partRows(project);
  return (
    found?.rows.flatMap(({ row, refs }): Draft[] => {
      const cell = cellOf(found.table, row, ...ratingHeads);
      if (cell === null || !/^[RC]\d/.test(refs[0] ?? '')) return [];
      return [
        {
          title: `${refs.join(', ')} has no rating any more`,
          changes: [word(row.file, row.line, withCell(row, cell, ''))],
          at: [row],
          why: 'A builder buys one for too little voltage or power.',
        },
      ];
    }) ?? []
  );
};
