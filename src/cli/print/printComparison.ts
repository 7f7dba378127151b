import type { Comparison } from '#app/ports.ts';
import type { Box } from '#core/place.ts';
import { count, wrapped } from './layout.ts';

/** Whether two pictures show one thing, and what changed, as marks that can be copied into `shots.yaml`. */
export function printComparison({ alignment, changes = null }: Comparison): string {
  if (alignment === null) {
    return `${wrapped(
      'The two do not lie over one another: they show different things, or one thing from too far apart. Nothing was compared.',
      '',
    )}\n`;
  }
  const agree = `They show one thing: ${Math.round(100 * alignment.confidence)} % of what both show agrees.`;
  if (changes === null) return `${wrapped(`${agree} Too little of them lies in one plane to say what changed.`, '')}\n`;
  if (changes.length === 0)
    return `${wrapped(`${agree} Nothing changed that can be told from light and noise.`, '')}\n`;
  const rings = changes.flatMap(({ inSecond }) => (inSecond === null ? [] : [ringAround(inSecond)]));
  return [
    wrapped(`${agree} ${count(changes.length, 'place')} changed, the largest first. As marks on the later one:`, ''),
    '    callouts:',
    ...rings.map((ring) => `      - ring: [${ring.map((number) => number.toFixed(3)).join(', ')}]`),
    '',
  ].join('\n');
}

/** An ellipse round a box: centre, half width, half height. */
function ringAround({ x, y, width, height }: Box): number[] {
  return [x + width / 2, y + height / 2, Math.min(1, (width / 2) * 1.25), Math.min(1, (height / 2) * 1.25)];
}
