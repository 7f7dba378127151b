import type { Ref } from './part.ts';
import type { TextPlace } from './place.ts';

/** One end of a wire: a pin of a part, as written. */
export interface Endpoint {
  readonly ref: Ref;
  readonly pin: string;
}

/** `A.1~B.2`, the two ends in code-point order, pins in upper case. */
export type ConnectionId = string;

/** One row of the wiring table. */
export interface Connection {
  readonly id: ConnectionId;
  readonly from: Endpoint;
  readonly to: Endpoint;
  readonly net: string | null;
  readonly colour: string | null;
  readonly gauge: string | null;
  readonly length: string | null;
  readonly note: string | null;
  readonly place: TextPlace;
  readonly cells: Readonly<Partial<Record<WiringColumn, TextPlace>>>;
}

export type WiringColumn = 'from' | 'to' | 'net' | 'colour' | 'gauge' | 'length' | 'note';

/** The name of a connection, the same whichever end is written first. */
export function connectionId(a: Endpoint, b: Endpoint): ConnectionId {
  const ends = [endpointId(a), endpointId(b)];
  return (ends[0] ?? '') <= (ends[1] ?? '') ? ends.join('~') : ends.reverse().join('~');
}

/** `U1.D5`, in upper case. */
export function endpointId(end: Endpoint): string {
  return `${end.ref}.${end.pin}`.toUpperCase();
}
