import type { Judged } from '#core/assembled.ts';
import type { Finding, Verdict } from '#core/finding.ts';
import { element, formatDocument, type Html, styleElement } from '../shared/html.ts';
import { renderAlertStock } from '../shared/renderCaution.ts';
import { renderWholeLine } from '../shared/renderWorkLine.ts';
import { pageSheet } from '../shared/stylesheet.ts';
import { type Account, accountOf } from './account.ts';
import { ledgerStyle } from './ledgerStyle.ts';
import { renderEnd } from './renderEnd.ts';
import { renderEntry } from './renderEntry.ts';
import { renderOpening } from './renderOpening.ts';

/**
 * The rehearsal as one page that stands alone: what the builder has before and after each step, and where that
 * builder stops. It looks as the published guide does, of which it is the account.
 */
export function renderLedger(judged: Judged, findings: readonly Finding[], verdict: Verdict): string {
  const account = accountOf(judged, findings, verdict);
  return formatDocument(
    element(
      'html',
      { lang: 'en' },
      element(
        'head',
        {},
        element('meta', { charset: 'utf-8' }),
        element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
        element('meta', { name: 'generator', content: 'twicebuilt rehearse' }),
        element('meta', { name: 'color-scheme', content: 'light dark' }),
        element('title', {}, `${account.title}: the rehearsal`),
        styleElement(pageSheet(ledgerStyle)),
      ),
      renderBody(account),
    ),
  );
}

function renderBody(account: Account): Html {
  return element(
    'body',
    {},
    account.entries.length > 0 && element('a', { class: 'skip', href: '#steps' }, 'Go to the steps'),
    renderAlertStock(),
    renderOpening(account),
    element(
      'main',
      {},
      account.entries.length > 0 && renderCourse(account),
      ...account.entries.map((entry) => renderEntry(entry, account)),
      renderEnd(account),
    ),
    element(
      'footer',
      {},
      element(
        'p',
        {},
        'A simulated first-time builder did what the steps declare, and nothing else. An aid to the maker, no approval.',
      ),
      element('p', {}, `As of ${account.asOf}.`),
    ),
  );
}

/** The whole work as one line, and its steps with what each takes and where the builder stops. */
function renderCourse({ line, entries }: Account): Html {
  return element(
    'section',
    { class: 'work', 'aria-labelledby': 'steps-heading' },
    element('h2', { id: 'steps-heading' }, 'The way through the guide'),
    element(
      'nav',
      { id: 'steps', class: 'course', 'aria-label': 'Steps' },
      renderWholeLine(line),
      element(
        'ol',
        {},
        ...entries.map(({ number, heading, id, stops, minutes }) =>
          element(
            'li',
            {},
            element(
              'a',
              { href: `#${id}` },
              element('span', { class: 'figure' }, number),
              element('span', { class: 'name' }, heading),
            ),
            element(
              'span',
              { class: 'figure' },
              stops.length > 0
                ? element('strong', {}, stops.length === 1 ? '1 stop' : `${stops.length} stops`)
                : minutes,
            ),
          ),
        ),
      ),
    ),
  );
}
