import { element, type Html } from '../../shared/html.ts';

/** All drawings are this large, and things lie on a line through their middle. */
export const sheet = { width: 160, height: 72, middle: 36 } as const;

/** The outline of a body, filled with the ground so that it hides the line it lies on. */
export function body(d: string): Html {
  return element('path', { class: 'body', d });
}

/** A body that carries colours, light at night too so that a dark band is seen on it. */
export function skin(d: string): Html {
  return element('path', { class: 'skin', d });
}

/** Leads, edges and everything else that is only a line. */
export function line(d: string): Html {
  return element('path', { class: 'edge', d });
}

/** A mark that tells the way round, such as a stripe. */
export function mark(d: string): Html {
  return element('path', { class: 'mark', d });
}

/** Lines left open in a mark. */
export function gap(d: string): Html {
  return element('path', { class: 'gap', d });
}

/** Letters and figures around the middle of `x`. */
export function letters(x: number, y: number, text: string, kind: 'print' | 'hint' = 'hint'): Html {
  return element('text', { class: kind, x, y }, text);
}

export function box(x: number, y: number, width: number, height: number): string {
  return `M${x} ${y}h${width}v${height}h${-width}z`;
}

export function ball(x: number, y: number, radius: number): string {
  return `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`;
}
