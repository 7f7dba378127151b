import { type FactLine, factsOf, guideLines, itemsOf, refsIn, type StepLines, spotsOf, stepsOf } from '../guideOf.ts';
import { type Draft, dropped, type Operator, type Spot, word } from '../mutant.ts';
import { linesIn, type Project } from '../project.ts';
import { partRows, usesOf } from './parts.ts';
import { wiresOf } from './wiring.ts';

function rewrite(fact: FactLine, value: string): string {
  return fact.words.slice(0, fact.words.length - fact.value.length) + value;
}

function rowOf(project: Project, ref: string): Spot[] {
  return partRows(project)?.rows.flatMap(({ row, refs }) => (refs.includes(ref) ? [row] : [])) ?? [];
}

/** A step takes a reference that no list holds. */
export const renumberedInStep: Operator = (project) =>
  stepsOf(project).flatMap((step) =>
    factsOf(step, 'parts').flatMap((fact) =>
      itemsOf(fact.value).flatMap((item): Draft[] => {
        const [ref] = /^[A-Z]{1,3}\d+(?=$| )/.exec(item) ?? [];
        if (ref === undefined) return [];
        const other = ref.replace(/\d+/, (n) => `${Number(n) + 30}`);
        const items = itemsOf(fact.value).map((one) => (one === item ? item.replace(ref, other) : one));
        return [
          {
            title: `${step.heading} takes ${other} instead of ${ref}`,
            changes: [word(fact.file, fact.line, rewrite(fact, items.join(', ')))],
            at: [fact],
            reaches: [...usesOf(project, ref), ...rowOf(project, ref)],
            why: 'A builder looks for a part that the list does not hold.',
          },
        ];
      }),
    ),
  );

/** A step's facts forget a part that the step joins. */
export const partDroppedFromStep: Operator = (project) =>
  stepsOf(project).flatMap((step) =>
    factsOf(step, 'parts').flatMap((fact) =>
      itemsOf(fact.value).flatMap((item): Draft[] => {
        const [ref] = /^[A-Z]{1,3}\d+(?=$)/.exec(item) ?? [];
        const left = itemsOf(fact.value).filter((one) => one !== item);
        if (ref === undefined || left.length === 0) return [];
        const joins = usesOf(project, ref).filter(({ file, line }) =>
          linesIn(project, file)[line - 1]?.startsWith('- Connects'),
        );
        return [
          {
            title: `${step.heading} does not take up ${ref}`,
            changes: [word(fact.file, fact.line, rewrite(fact, left.join(', ')))],
            at: [...joins, ...rowOf(project, ref)],
            reaches: [fact, { file: step.file, line: step.first }, ...usesOf(project, ref)],
            why: 'A builder has no part to join, and one left over.',
          },
        ];
      }),
    ),
  );

/** A step takes more of a thing than the list holds. */
export const countInStepChanged: Operator = (project) =>
  stepsOf(project).flatMap((step) =>
    factsOf(step, 'parts').flatMap((fact) =>
      itemsOf(fact.value).flatMap((item): Draft[] => {
        const more = / × \d+$/.test(item)
          ? item.replace(/\d+$/, (n) => `${Number(n) + 2}`)
          : / \d+ cm$/.test(item)
            ? item.replace(/(\d+) cm$/, (_, n: string) => `${n}0 cm`)
            : null;
        if (more === null) return [];
        const items = itemsOf(fact.value).map((one) => (one === item ? more : one));
        const [ref = ''] = /^[A-Z]{1,3}\d+/.exec(item) ?? [];
        return [
          {
            title: `${step.heading} takes ${more} instead of ${item}`,
            changes: [word(fact.file, fact.line, rewrite(fact, items.join(', ')))],
            at: [fact, ...rowOf(project, ref), ...bulletOf(project, item)],
            reaches: usesOf(project, ref),
            why: 'A builder runs out of it.',
          },
        ];
      }),
    ),
  );

function bulletOf(project: Project, item: string): Spot[] {
  const words = item
    .replace(/ × .*| \d+ cm$/, '')
    .split(' ')
    .map((one) => one.slice(0, 4).toLowerCase());
  return linesIn(project, project.parts).flatMap((line, index) =>
    /^- \d/.test(line) && words.every((one) => line.toLowerCase().includes(one))
      ? [{ file: project.parts, line: index + 1 }]
      : [],
  );
}

/** A whole step is lost. */
export const stepDropped: Operator = (project) => {
  const steps = stepsOf(project);
  return steps.flatMap((step): Draft[] => {
    const pairs = factsOf(step, 'connects').flatMap(({ value }) => value.split(', '));
    const wires = wiresOf(project).filter(
      ({ from, to }) => pairs.includes(`${from} – ${to}`) || pairs.includes(`${to} – ${from}`),
    );
    const refs = factsOf(step, 'parts').flatMap(({ value }) => refsIn(value));
    const made = factsOf(step, 'makes').flatMap(({ value }) => itemsOf(value));
    const others = steps.filter((one) => one !== step);
    const users = others.flatMap((one) =>
      factsOf(one, 'parts').filter(({ value }) => itemsOf(value).some((item) => made.includes(item))),
    );
    const joins = others.flatMap((one) =>
      factsOf(one, 'connects').filter(({ value }) =>
        refs.some((ref) => new RegExp(`(?<![A-Z0-9])${ref}\\.`).test(value)),
      ),
    );
    const rows = refs.flatMap((ref) => rowOf(project, ref));
    const bullets = factsOf(step, 'parts').flatMap(({ value }) =>
      itemsOf(value).flatMap((item) => bulletOf(project, item)),
    );
    const at = [...wires.map(({ row }) => row), ...users, ...joins, ...rows, ...bullets];
    if (at.length === 0) return [];
    return [
      {
        title: `the step ${step.heading} is lost`,
        changes: [dropped(step.file, ...spotsOf(step).map(({ line }) => line))],
        at,
        reaches: [
          ...guideLines(project).filter(({ words }) => [...refs, ...made].some((one) => words.includes(one))),
          ...logLines(project, step),
        ],
        why: 'A builder never makes what later steps stand on.',
      },
    ];
  });
};

/** Lines of the log that speak of a step by its heading. */
export function logLines(project: Project, step: StepLines): Spot[] {
  return [...project.files].flatMap(([file, content]) =>
    typeof content === 'string' && file.endsWith('.md') && !project.guide.includes(file)
      ? content
          .split('\n')
          .flatMap((words, index) => (words === `step: ${step.heading}` ? [{ file, line: index + 1 }] : []))
      : [],
  );
}

/** Two steps change places, of which the second stands on the first. */
export const stepsSwapped: Operator = (project) => {
  const steps = stepsOf(project);
  return steps.slice(1).flatMap((second, index): Draft[] => {
    const first = steps[index];
    if (first === undefined || first.file !== second.file || first.last + 1 !== second.first) return [];
    const needs = dependence(first, second);
    if (needs.length === 0) return [];
    const lines = linesIn(project, first.file).map((_, at) => at + 1);
    const order = [
      ...lines.slice(0, first.first - 1),
      ...lines.slice(second.first - 1, second.last),
      ...lines.slice(first.first - 1, first.last),
      ...lines.slice(second.last),
    ];
    return [
      {
        title: `${second.heading} comes before ${first.heading}`,
        changes: [{ file: first.file, order }],
        at: needs,
        reaches: [...spotsOf(first), ...spotsOf(second)],
        why: 'A builder has to look ahead, or to undo what is done.',
      },
    ];
  });
};

/** Facts of a step that need what the step before it brings: parts to join, a thing made, power to measure. */
function dependence(first: StepLines, second: StepLines): FactLine[] {
  const brought = factsOf(first, 'parts').flatMap(({ value }) => refsIn(value));
  const made = factsOf(first, 'makes').flatMap(({ value }) => itemsOf(value));
  const joins = factsOf(second, 'connects').filter(({ value }) =>
    brought.some((ref) => new RegExp(`(?<![A-Z0-9])${ref}\\.`).test(value)),
  );
  const takes = factsOf(second, 'parts').filter(({ value }) => itemsOf(value).some((item) => made.includes(item)));
  const power = factsOf(first, 'power')[0]?.value ?? '';
  const reads = factsOf(second, 'measure').filter(({ value }) => power.endsWith('→ on') && / V\b/.test(value));
  return [...joins, ...takes, ...(factsOf(second, 'power')[0]?.value.startsWith('on') === true ? reads : [])];
}

/** The power is on while hands join wires. */
export const powerLeftOn: Operator = (project) =>
  stepsOf(project).flatMap((step) => {
    const joins = factsOf(step, 'connects');
    return factsOf(step, 'power').flatMap((power): Draft[] =>
      power.value !== 'off' || joins.length === 0
        ? []
        : [
            {
              title: `${step.heading} is done with the power on`,
              changes: [word(power.file, power.line, '- Power: on')],
              at: [power, ...joins],
              reaches: spotsOf(step),
              why: 'A builder works on a live circuit.',
            },
          ],
    );
  });

/** The power is off while volts are read. */
export const powerNeverOn: Operator = (project) => {
  const steps = stepsOf(project);
  return steps.flatMap((step) => {
    const reads = factsOf(step, 'measure').filter(({ value }) => /[\d.] V\b/.test(value));
    return factsOf(step, 'power').flatMap((power): Draft[] =>
      power.value === 'off' || reads.length === 0
        ? []
        : [
            {
              title: `${step.heading} never switches on`,
              changes: [word(power.file, power.line, '- Power: off')],
              at: [power, ...reads],
              reaches: spotsOf(step),
              why: 'A builder reads nothing and looks for a fault in good work.',
            },
          ],
    );
  });
};

/** A tool is forgotten in the list. */
export const toolDropped: Operator = (project) => {
  const steps = stepsOf(project);
  const named = [...new Set(steps.flatMap((step) => factsOf(step, 'tools').flatMap(({ value }) => itemsOf(value))))];
  return named.flatMap((tool): Draft[] => {
    const row = linesIn(project, project.tools).findIndex((words) => {
      const name = words.replace(/^(?:- |\d+\. )/, '').toLowerCase();
      return (
        !words.startsWith('- Tools') && new RegExp(`^"?${tool.toLowerCase()}(?:$|[,;]| with\\b| that\\b)`).test(name)
      );
    });
    const uses = steps.flatMap((step) => factsOf(step, 'tools').filter(({ value }) => itemsOf(value).includes(tool)));
    if (row < 0 || uses.length === 0) return [];
    return [
      {
        title: `${tool} is not in the list of tools`,
        changes: [dropped(project.tools, row + 1)],
        at: uses,
        reaches: steps.flatMap(spotsOf),
        why: 'A builder starts without the tool and has to stop.',
      },
    ];
  });
};

/** What a step's words do with a tool. */
const deeds: Readonly<Record<string, RegExp>> = {
  'soldering iron': /\bSolder\b|\bsolder /,
  multimeter: /\bProbe\b|\bprobe\b|\bRead \d|\bread \d/,
  'wire strippers': /\bStrip \d/,
  screwdriver: /\bDrive\b|\bScrew\b|\bscrew\b|\bTurn the trimmer/,
  drill: /\bDrill\b/,
};

/** A step forgets to say that a tool is needed, which its words use. */
export const toolDroppedFromStep: Operator = (project) =>
  stepsOf(project).flatMap((step) =>
    factsOf(step, 'tools').flatMap((fact) =>
      itemsOf(fact.value).flatMap((tool): Draft[] => {
        const deed = deeds[tool];
        const done = deed === undefined ? [] : step.prose.filter(({ words }) => deed.test(words));
        const left = itemsOf(fact.value).filter((one) => one !== tool);
        if (done.length === 0) return [];
        return [
          {
            title: `${step.heading} does not name the ${tool}`,
            changes: [word(fact.file, fact.line, rewrite(fact, left.length === 0 ? 'none' : left.join(', ')))],
            at: [fact, ...done],
            reaches: spotsOf(step),
            why: 'A builder sits down without the tool.',
          },
        ];
      }),
    ),
  );

/** A reading to be expected is another one than the same step's words, or the part's own value, say. */
export const readingChanged: Operator = (project) =>
  stepsOf(project).flatMap((step) =>
    factsOf(step, 'measure').flatMap((fact): Draft[] => {
      const [, n = '', unit = ''] = / (?<n>[\d.]+) (?<unit>k?Ω|V) ±/.exec(fact.value) ?? [];
      if (n === '') return [];
      const plain = `${Number(n)}`;
      const said = step.prose.filter(({ words }) =>
        new RegExp(`\\b${plain.replace('.', '\\.')}(?:\\.0)? ${unit}(?![\\p{L}])`, 'u').test(words),
      );
      const parts = (partRows(project)?.rows ?? []).filter(
        ({ row, refs }) =>
          refs.some((ref) => fact.value.includes(`${ref}.`) || unit.endsWith('Ω')) &&
          row.words.includes(`${plain} ${unit}`),
      );
      if (said.length === 0 && parts.length === 0) return [];
      const other = `${Number(n) * 2}`;
      return [
        {
          title: `${step.heading} expects ${other} ${unit} instead of ${n} ${unit}`,
          changes: [word(fact.file, fact.line, fact.words.replace(`${n} ${unit}`, `${other} ${unit}`))],
          at: [fact, ...said],
          reaches: parts.map(({ row }) => row),
          why: 'A builder takes good work for bad.',
        },
      ];
    }),
  );
