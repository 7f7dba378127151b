import type { MistakeBlock } from '#guide/guide.ts';
import { withStop } from '#guide/withStop.ts';
import { type Child, element, type Html } from '../shared/html.ts';

/** A mistake from the maker's own bench, so that nobody need make it again. */
export function renderMistake(note: MistakeBlock): Html {
  return element(
    'div',
    { class: 'mistake', role: 'note' },
    element(
      'p',
      { class: 'label' },
      `It went wrong here once${note.at === null ? '' : `, on ${note.at.slice(0, 10)}`}`,
    ),
    element(
      'p',
      {},
      withStop(note.mistake),
      ...labelled('The cause', note.cause),
      ...labelled('The remedy', note.remedy),
      ...labelled('The reading', note.reading),
    ),
  );
}

function labelled(label: string, text: string | null): Child[] {
  return text === null ? [] : [` ${label}: `, withStop(text)];
}
