import { type FactLine, factsOf, guideLines, stepsOf } from '../guideOf.ts';
import { type Draft, dropped, type Operator, type Spot, word } from '../mutant.ts';
import { linesIn, type Project } from '../project.ts';
import { type Cell, cellOf, type Row, type Table, tableOf, withCell } from '../tableOf.ts';

/** A row of the wiring with its two ends as steps write them. */
interface Wire {
  readonly row: Row;
  readonly from: string;
  readonly to: string;
  /** The cells of the pins. */
  readonly fromCell: Cell;
  readonly toCell: Cell;
  readonly colour: Cell | null;
  readonly net: string;
}

export function wiresOf(project: Project): Wire[] {
  const table =
    tableOf(project, project.wiring, 'from', 'to') ??
    tableOf(project, project.wiring, 'von', 'nach') ??
    tableOf(project, project.wiring, 'from part', 'to pin');
  if (table === null) return [];
  return table.rows.flatMap((row) => {
    const fromCell = cellOf(table, row, 'from', 'von', 'from pin');
    const toCell = cellOf(table, row, 'to', 'nach', 'to pin');
    if (fromCell === null || toCell === null) return [];
    return [
      {
        row,
        from: endOf(table, row, fromCell, 'from part'),
        to: endOf(table, row, toCell, 'to part'),
        fromCell,
        toCell,
        colour: cellOf(table, row, 'colour', 'farbe'),
        net: cellOf(table, row, 'net', 'netz')?.text ?? '',
      },
    ];
  });
}

function endOf(table: Table, row: Row, pin: Cell, head: string): string {
  const part = cellOf(table, row, head);
  return part === null ? pin.text : `${part.text}.${pin.text}`;
}

/** Facts that make a wire. */
export function joinsOf(project: Project, { from, to }: Pick<Wire, 'from' | 'to'>): FactLine[] {
  return stepsOf(project).flatMap((step) =>
    factsOf(step, 'connects').filter(({ value }) =>
      value.split(', ').some((pair) => pair === `${from} – ${to}` || pair === `${to} – ${from}`),
    ),
  );
}

/** Lines of prose that name an end of a wire. */
function proseOf(project: Project, end: string): (Spot & { words: string })[] {
  const name = new RegExp(`(?<![\\p{L}\\p{N}.])${end.replace(/[.+]/g, '\\$&')}(?![\\p{L}\\p{N}])`, 'u');
  return guideLines(project).filter(({ words }) => !/^(?:- |\||!|#)/.test(words) && name.test(words));
}

/** A wire is forgotten in the table: the step joins what the table does not have. */
export const wireRowDropped: Operator = (project) =>
  wiresOf(project).flatMap((wire): Draft[] => {
    const joins = joinsOf(project, wire);
    if (joins.length === 0) return [];
    return [
      {
        title: `${wire.from} – ${wire.to} is not in the table`,
        changes: [dropped(wire.row.file, wire.row.line)],
        at: joins,
        reaches: [...proseOf(project, wire.from), ...proseOf(project, wire.to), ...codeLinesOf(project, wire)],
        why: 'A builder cannot tell whether the step or the table is right.',
      },
    ];
  });

/** Pins of a controller as boards name them, with another one of the same kind. */
const pinForms = /^(?<name>IO|GP|D|PB|A|)(?<n>\d+)$/;

export function otherPin(project: Project, pin: string): string | null {
  const { name = '', n = '' } = pinForms.exec(pin)?.groups ?? {};
  if (n === '') return null;
  const used = [...project.files.values()].filter((content) => typeof content === 'string').join('\n');
  const free = (
    name === 'IO' ? [14, 32, 33, 18, 19] : name === 'A' ? [3, 4] : name === 'PB' ? [3, 4] : [9, 10, 11, 12, 13, 18]
  )
    .map((one) => `${name}${one}`)
    .find((one) => !new RegExp(`\\.${one}\\b|= ${one.replace(/^\D+/, '')}\\b|\\t${one}\\t|,${one},`).test(used));
  return free ?? null;
}

/** Which part carries the code, as steps and tables call it. */
export function controllerOf(project: Project): string | null {
  const code = stepsOf(project).flatMap((step) => factsOf(step, 'code'))[0];
  return code === undefined ? null : (/→ (\S+)$/.exec(code.value)?.[1] ?? null);
}

export function pinOn(end: string, controller: string | null): string | null {
  return controller !== null && end.startsWith(`${controller}.`) ? end.slice(controller.length + 1) : null;
}

/** How code writes a pin: by its number, or by a name that is a constant. Null for supplies. */
export function numberOf(pin: string): string | null {
  if (/^(?:A|PB)\d$/.test(pin)) return pin;
  return /^(?:IO|GP|D)?(\d+)$/.exec(pin)?.[1] ?? null;
}

/** Lines of code that state the number of a controller's pin. */
export function codeLinesOf(project: Project, { from, to }: Pick<Wire, 'from' | 'to'>): Spot[] {
  const controller = controllerOf(project);
  const pin = pinOn(from, controller) ?? pinOn(to, controller);
  if (pin === null) return [];
  const number = numberOf(pin);
  if (number === null) return [];
  return project.code.flatMap((file) =>
    linesIn(project, file).flatMap((words, index) =>
      new RegExp(`(?:PIN|pin|LED|BUTTON|BUZZER|DISPLAY|LIGHT|ROW|COL)\\w*(?: = |_\\w+ | )${number}\\b`).test(words)
        ? [{ file, line: index + 1 }]
        : [],
    ),
  );
}

/** A wire ends at another pin of the controller in the table alone. */
export const wireMoved: Operator = (project) => {
  const controller = controllerOf(project);
  return wiresOf(project).flatMap((wire): Draft[] => {
    const at = pinOn(wire.from, controller) !== null ? 'from' : 'to';
    const pin = pinOn(wire[at], controller);
    const other = pin === null ? null : otherPin(project, pin);
    const joins = joinsOf(project, wire);
    if (pin === null || other === null || joins.length === 0) return [];
    const cell = at === 'from' ? wire.fromCell : wire.toCell;
    return [
      {
        title: `${wire[at]} is ${other} in the table`,
        changes: [
          word(
            wire.row.file,
            wire.row.line,
            withCell(wire.row, cell, `${cell.text.slice(0, cell.text.length - pin.length)}${other}`),
          ),
        ],
        at: [wire.row, ...joins, ...codeLinesOf(project, wire)],
        reaches: proseOf(project, wire[at]),
        why: 'A builder wires by the table, and the code drives another pin.',
      },
    ];
  });
};

/** Two wires of one part have each other's ends. */
export const wiresCrossed: Operator = (project) => {
  const wires = wiresOf(project);
  return wires.flatMap((one, index) => {
    const other = wires
      .slice(index + 1)
      .find(
        ({ to, from, net }) => partOf(to) === partOf(one.to) && to !== one.to && from !== one.from && net !== one.net,
      );
    const joins = other === undefined ? [] : [...joinsOf(project, one), ...joinsOf(project, other)];
    if (other === undefined || joins.length === 0 || isSymmetric(one.to)) return [];
    return [
      {
        title: `${one.to} and ${other.to} are crossed in the table`,
        changes: [
          {
            file: one.row.file,
            words: new Map([
              [one.row.line, withCell(one.row, one.toCell, other.toCell.text)],
              [other.row.line, withCell(other.row, other.toCell, one.toCell.text)],
            ]),
          },
        ],
        at: [one.row, other.row, ...joins],
        reaches: [
          ...proseOf(project, one.to),
          ...proseOf(project, other.to),
          ...codeLinesOf(project, one),
          ...codeLinesOf(project, other),
        ],
        why: 'A builder who wires by the table crosses two wires.',
      },
    ];
  });
};

function partOf(end: string): string {
  return end.split('.')[0] ?? end;
}

/** Resistors, unpolarised capacitors, buttons and rails serve either way round. */
function isSymmetric(end: string): boolean {
  return /^(?:R|C|S|BZ|F)\d+\.\d$|^BB1\./.test(end);
}

const colours = ['red', 'black', 'yellow', 'green', 'blue', 'white', 'orange', 'violet', 'grey', 'brown'];

/** A wire has another colour in the table than in the step. */
export const colourChanged: Operator = (project) =>
  wiresOf(project).flatMap((wire): Draft[] => {
    const { colour, row } = wire;
    if (colour === null || !colours.includes(colour.text)) return [];
    const said = [wire.from, wire.to]
      .flatMap((end) => proseOf(project, end))
      .filter(({ words }) => sentenceSays(words, wire, colour.text));
    if (said.length === 0) return [];
    const other =
      colours.find((one) => one !== colour.text && !said.some(({ words }) => words.toLowerCase().includes(one))) ??
      'pink';
    return [
      {
        title: `${wire.from} – ${wire.to}: ${colour.text} becomes ${other}`,
        changes: [word(row.file, row.line, withCell(row, colour, other))],
        at: [row, ...said],
        why: 'A builder takes one colour and looks for another when something is wrong.',
      },
    ];
  });

function sentencesOf(words: string): string[] {
  return words.split(/(?<=[.:;]) /);
}

/** One sentence names both ends of the wire. */
function joins(words: string, { from, to }: Pick<Wire, 'from' | 'to'>): boolean {
  return sentencesOf(words).some((sentence) => sentence.includes(from) && sentence.includes(to));
}

/** One sentence names the colour and both ends of the wire. */
export function sentenceSays(words: string, wire: Pick<Wire, 'from' | 'to'>, colour: string): boolean {
  return sentencesOf(words).some((sentence) => sentence.toLowerCase().includes(colour) && joins(sentence, wire));
}

/** A step tells of another colour than the table. */
export const colourInStepChanged: Operator = (project) =>
  wiresOf(project).flatMap((wire): Draft[] => {
    const { colour } = wire;
    if (colour === null || !colours.includes(colour.text)) return [];
    const said = proseOf(project, wire.from).find(({ words }) => sentenceSays(words, wire, colour.text));
    if (said === undefined) return [];
    const other = colours.find((one) => !said.words.toLowerCase().includes(one)) ?? 'pink';
    const sentences = said.words.split(/(?<=[.:;]) /);
    const to = sentences
      .map((one) =>
        sentenceSays(one, wire, colour.text) ? one.replace(new RegExp(`\\b${colour.text}\\b`, 'i'), other) : one,
      )
      .join(' ');
    return [
      {
        title: `the step takes ${other} for ${wire.from} – ${wire.to}`,
        changes: [word(said.file, said.line, to)],
        at: [said, wire.row],
        why: 'A builder takes one colour and looks for another when something is wrong.',
      },
    ];
  });

/** A step's facts join another pin of the controller. */
export const pinInFactChanged: Operator = (project) => pinInStep(project, 'fact');

/** A step's prose speaks of another pin of the controller. */
export const pinInProseChanged: Operator = (project) => pinInStep(project, 'prose');

function pinInStep(project: Project, where: 'fact' | 'prose'): Draft[] {
  const controller = controllerOf(project);
  return wiresOf(project).flatMap((wire): Draft[] => {
    const end = [wire.from, wire.to].find((one) => pinOn(one, controller) !== null);
    const pin = end === undefined ? null : pinOn(end, controller);
    const other = pin === null ? null : otherPin(project, pin);
    if (end === undefined || pin === null || other === null) return [];
    const joins = joinsOf(project, wire);
    const far = end === wire.from ? wire.to : wire.from;
    const lines = where === 'fact' ? joins : proseOf(project, end).filter(({ words }) => words.includes(far));
    const line = lines[0];
    if (line === undefined) return [];
    const moved = `${end.slice(0, end.length - pin.length)}${other}`;
    const words =
      where === 'fact'
        ? line.words.replace(`${wire.from} – ${wire.to}`, `${wire.from} – ${wire.to}`.replace(end, moved))
        : line.words.replace(end, moved);
    if (words === line.words) return [];
    return [
      {
        title: `the step's ${where} says ${moved}`,
        changes: [word(line.file, line.line, words)],
        at: [line, wire.row],
        reaches: [...joins, ...codeLinesOf(project, wire)],
        why: 'A builder solders to a pin that the code does not drive.',
      },
    ];
  });
}

/** A step forgets a wire, in its facts and in its words. */
export const joinDropped: Operator = (project) =>
  wiresOf(project).flatMap((wire): Draft[] =>
    joinsOf(project, wire).flatMap((join) => {
      const pairs = join.value.split(', ');
      const left = pairs.filter((pair) => pair !== `${wire.from} – ${wire.to}` && pair !== `${wire.to} – ${wire.from}`);
      if (left.length === 0 || joinsOf(project, wire).length > 1) return [];
      const told = proseOf(project, wire.from).filter(({ file, words }) => file === join.file && joins(words, wire));
      const words = new Map(
        told.map((one) => [
          one.line,
          sentencesOf(one.words)
            .filter((sentence) => !joins(sentence, wire))
            .join(' '),
        ]),
      );
      return [
        {
          title: `no step makes ${wire.from} – ${wire.to}`,
          changes: [{ file: join.file, words: words.set(join.line, `- Connects: ${left.join(', ')}`) }],
          at: [wire.row, join],
          reaches: [...proseOf(project, wire.from), ...proseOf(project, wire.to)],
          why: 'A builder leaves the wire out.',
        },
      ];
    }),
  );
