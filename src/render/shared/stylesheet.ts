import { pageStyle } from './style/page.ts';
import { printStyle } from './style/print.ts';
import { readerStyle } from './style/reader.ts';
import { stepStyle } from './style/step.ts';
import { tableStyle } from './style/table.ts';
import { textStyle } from './style/text.ts';
import tokens from './tokens.json';

/** A page's style: its colours from the tokens, no type or picture fetched from anywhere. `own` is what it adds. */
export function pageSheet(own = ''): string {
  return [
    `:root{color-scheme:light dark;${variables(tokens.light)}}`,
    `@media (prefers-color-scheme:dark){:root{${variables(tokens.dark)}}}`,
    pageStyle,
    textStyle,
    tableStyle,
    stepStyle,
    own,
    `@media print{:root{color-scheme:light;${variables({ ...tokens.light, lit: '#ffffff', paper: '#ffffff' })}}}`,
    printStyle,
  ].join('\n');
}

/** The style of the published guide. */
export const stylesheet = pageSheet(readerStyle);

function variables(colours: Readonly<Record<string, string>>): string {
  return Object.entries(colours)
    .map(([name, colour]) => `--${name}:${colour}`)
    .join(';');
}
