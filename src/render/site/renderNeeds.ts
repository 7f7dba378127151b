import { formatWork } from '#guide/formatMinutes.ts';
import type { Needs, PartNeed, StepBlock } from '#guide/guide.ts';
import { withStop } from '#guide/withStop.ts';
import { formatQuantity } from '#notation/value.ts';
import { type Child, element, type Html } from '../shared/html.ts';
import { fragmentUrl } from '../shared/safeUrl.ts';
import { formatAmount, formatRefs } from './formatAmount.ts';
import { headingAt } from './headingAt.ts';

/** What must lie on the bench now, and how the step stands to power and time. Null where the step tells nothing. */
export function renderNeeds(step: StepBlock): Html | null {
  const { parts, tools, code } = step.needs;
  const items = [
    ...parts.map(renderPart),
    ...(tools.length > 0 ? [renderTools(tools)] : []),
    ...code.map((file) => [
      linked(file.block, element('code', {}, file.path)),
      file.onto && ` to load onto ${file.onto}`,
    ]),
  ];
  const sentences = conditionsOf(step);
  if (items.length === 0 && sentences.length === 0) return null;
  return element(
    'div',
    { class: 'needs' },
    items.length > 0 && element(headingAt(step.level + 1), { class: 'label' }, 'Lay out for this step'),
    items.length > 0 && element('ul', {}, ...items.map((item) => element('li', {}, item))),
    ...sentences.map((sentence) => element('p', {}, sentence)),
  );
}

function renderPart(need: PartNeed): Child {
  const counted = need.amount.unit !== 'pcs' || need.amount.n !== Math.max(1, need.refs.length);
  const refs = need.refs.length > 0 ? element('span', { class: 'refs' }, `${formatRefs(need.refs)} `) : null;
  const value = need.value && [
    ', ',
    element('span', { class: 'whole' }, formatQuantity(need.value.kind, need.value.si)),
  ];
  return [
    refs,
    linked(need.row, need.named),
    value,
    counted && [
      need.amount.unit === 'pcs' ? ' × ' : ', ',
      element('span', { class: 'whole' }, formatAmount(need.amount)),
    ],
  ];
}

/** Tools come back step after step, so they stand in one line. */
function renderTools(tools: Needs['tools']): Child {
  return ['Tools: ', ...tools.flatMap((tool, i) => [i > 0 && ', ', linked(tool.row, tool.name)])];
}

function linked(block: string | null, child: Child): Child {
  return block === null ? child : element('a', { href: fragmentUrl(block) }, child);
}

function conditionsOf(step: StepBlock): string[] {
  const sentences = [
    step.needs.power && powerSentence(step.needs.power),
    step.minutes && `It takes ${formatWork(step.minutes)}.`,
    step.side && withStop(`Side: ${step.side}`),
    step.variant && withStop(`Only for: ${step.variant}`),
    step.optional &&
      (isBareYes(step.optional)
        ? 'You may leave this step out.'
        : withStop(`You may leave this step out: ${step.optional}`)),
  ];
  return sentences.filter((sentence): sentence is string => Boolean(sentence));
}

function powerSentence(power: NonNullable<Needs['power']>): string {
  if (power.during === power.after) return power.during === 'on' ? 'The power is on.' : 'The power stays off.';
  return power.after === 'on' ? 'The power is off until the end, then on.' : 'The power is on until the end, then off.';
}

/** True for a fact that only says that it holds. */
export function isBareYes(text: string): boolean {
  return /^(yes|true)\.?$/i.test(text.trim());
}
