import type { StepMark } from '#guide/guide.ts';
import { type Child, element } from '../shared/html.ts';
import { fragmentUrl } from '../shared/safeUrl.ts';

/** `step 4`, `steps 2, 5 and 9`, each number a link. */
export function renderStepMarks(marks: readonly StepMark[]): Child[] {
  const links = marks.map((mark) => element('a', { href: fragmentUrl(mark.block) }, mark.number));
  return [
    marks.length === 1 ? 'step ' : 'steps ',
    ...links.flatMap((link, i): Child[] => [i === 0 ? '' : i === links.length - 1 ? ' and ' : ', ', link]),
  ];
}
