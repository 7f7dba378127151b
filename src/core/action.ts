import type { TextPlace } from './place.ts';
import type { StepId } from './step.ts';

/** Kinds of work at the bench that bring tools, hazards or states of the circuit with them. */
export const actionKinds = [
  'solder',
  'desolder',
  'hot-air',
  'crimp',
  'cut',
  'strip',
  'drill',
  'saw',
  'sand',
  'glue',
  'heat-shrink',
  'heat-set',
  'screw',
  'bend',
  'print',
  'load-code',
  'plug-in',
  'unplug',
  'switch-on',
  'switch-off',
  'measure',
  'charge',
  'turn-over',
  'wait',
  'wire',
  'fit',
  'remove',
  'clean',
  'paint',
  'sew',
  'tape',
  'etch',
  'laser-cut',
] as const;

export type ActionKind = (typeof actionKinds)[number];

/**
 * Work that the text speaks of. `told` is `do` for an instruction ('Solder R1'), `not` for what the builder is told
 * to leave ('do not solder yet'), `mention` for everything else ('the soldered joint').
 */
export interface Action {
  readonly kind: ActionKind;
  /** The verb as written, such as `Solder` or `hot-gluing`. */
  readonly verb: string;
  readonly told: 'do' | 'not' | 'mention';
  readonly step: StepId | null;
  readonly place: TextPlace;
}
