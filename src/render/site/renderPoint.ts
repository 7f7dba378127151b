import { element, type Html } from '../shared/html.ts';

/** Names longer than this, in characters, may break: two of them and a wire have no room in a line of a phone. */
const longestWhole = 14;

/** A point of the circuit by its name, at the end of a drawn line; `href` leads to its row of the wiring table. */
export function renderPoint(name: string, href: string | null = null, hidden = false): Html {
  const attributes = {
    class: name.length > longestWhole ? 'point long' : 'point',
    'aria-hidden': hidden ? 'true' : null,
  };
  return href === null ? element('span', attributes, name) : element('a', { ...attributes, href }, name);
}
