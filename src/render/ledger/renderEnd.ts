import { formatMinutes } from '#guide/formatMinutes.ts';
import { unitOfPart } from '#rehearsal/amounts.ts';
import { element, type Html } from '../shared/html.ts';
import { renderBranch } from '../shared/renderWorkLine.ts';
import type { Account } from './account.ts';
import { renderStop } from './renderStop.ts';

/** What the builder has after the last step. */
export function renderEnd(account: Account): Html | null {
  const last = account.entries.at(-1);
  if (last === undefined && account.atEnd.length === 0) return null;
  const { build, ledger } = account.judged;
  const { after } = last ?? { after: null };
  const left = Object.entries(after?.bag ?? {}).filter(([, n]) => n > 0);
  const joins = new Set(build.connections.map(({ id }) => id));
  const made = after?.made.filter((name) => joins.has(name)).length ?? 0;
  const sentences =
    after === null
      ? []
      : [
          build.connections.length > 0 &&
            `${made} of ${build.connections.length} connections of the wiring table are made by name.`,
          `The power is ${after.powered ? 'on' : 'off'}.`,
          after.loaded.length > 0 && `On the boards: ${after.loaded.join(', ')}.`,
          after.warned.length > 0 && `${after.warned.length} cautions were heard.`,
          after.clock.hands + after.clock.wait > 0 &&
            `The steps take ${formatMinutes(after.clock.hands)} by hand and ${formatMinutes(after.clock.wait)} of waiting${after.clock.untold > 0 ? `; ${after.clock.untold} tell no time` : ''}.`,
        ];
  return element(
    'section',
    { id: 'end', class: 'section', 'aria-labelledby': 'end-heading' },
    renderBranch(),
    element('h2', { id: 'end-heading' }, 'At the end'),
    element(
      'div',
      { class: 'content' },
      ...account.atEnd.map((stop) => renderStop(stop, build)),
      element('p', {}, sentences.filter((one) => one !== false).join(' ')),
      ledger.steps.length > 0 && renderLeft(left, account),
    ),
  );
}

function renderLeft(left: readonly (readonly [string, number])[], { judged: { build } }: Account): Html {
  if (left.length === 0) return element('p', {}, 'Nothing is left in the bag.');
  return element(
    'p',
    {},
    `Left in the bag: ${left
      .map(([id, n]) => {
        const part = build.parts.find((one) => one.id === id);
        const unit = unitOfPart(part);
        return `${part?.refs[0] ?? part?.description ?? id}${unit === 'pcs' ? ` × ${n}` : ` ${n} ${unit}`}`;
      })
      .join(', ')}.`,
  );
}
