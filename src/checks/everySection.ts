import type { Build } from '#core/build.ts';
import type { Section } from '#core/step.ts';

/** The sections of the guide and of the pages beside it. */
export function everySection({ instructions, beside }: Build): Section[] {
  return [...instructions.sections, ...beside];
}
