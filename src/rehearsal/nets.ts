import { type Endpoint, endpointId } from '#core/connection.ts';
import { rememberFor } from '#core/remember.ts';

/** A wire, with the name of its net where it has one. */
export interface Wire {
  readonly from: Endpoint;
  readonly to: Endpoint;
  readonly net?: string | null;
}

/** Which ends hang together electrically: through any chain of wires, and through nets of one name. */
export interface Nets {
  joined(a: Endpoint, b: Endpoint): boolean;
  /** All ends on the net of this one, itself included when a wire reaches it. */
  endsOn(end: Endpoint): readonly Endpoint[];
  /** Names of the nets that the end is on, as written. */
  namesAt(end: Endpoint): readonly string[];
}

/** Joins wires into nets. Parts do not conduct: a net ends at both legs of a resistor. */
export const netsOf = rememberFor((wires: readonly Wire[]): Nets => {
  const parents = new Map<string, string>();
  const rootOf = (node: string): string => {
    let root = node;
    for (let next = parents.get(root); next !== undefined && next !== root; next = parents.get(root)) root = next;
    return root;
  };
  const join = (a: string, b: string) => {
    for (const node of [a, b]) if (!parents.has(node)) parents.set(node, node);
    parents.set(rootOf(a), rootOf(b));
  };
  for (const { from, to, net } of wires) {
    join(nodeOf(from), nodeOf(to));
    if (net) join(nodeOf(from), `net ${net.trim().toUpperCase()}`);
  }

  const ends = new Map<string, Map<string, Endpoint>>();
  const names = new Map<string, Set<string>>();
  for (const { from, to, net } of wires) {
    const root = rootOf(nodeOf(from));
    const here = ends.get(root) ?? new Map<string, Endpoint>();
    for (const end of [from, to]) here.set(endpointId(end), end);
    ends.set(root, here);
    if (net) names.set(root, (names.get(root) ?? new Set<string>()).add(net.trim()));
  }
  return {
    joined: (a, b) => rootOf(nodeOf(a)) === rootOf(nodeOf(b)),
    endsOn: (end) => [...(ends.get(rootOf(nodeOf(end)))?.values() ?? [])],
    namesAt: (end) => [...(names.get(rootOf(nodeOf(end))) ?? [])],
  };
});

const supplyPin = /^(?:GND|AGND|DGND|VSS|VCC|VDD|VIN|VBUS|3V3|3\.3V|5V|0V)(?=[_.]?\d*$)/;

/** Several ground or supply pins of one part are one node inside it: GND1 and GND2 of a module. */
function nodeOf(end: Endpoint): string {
  const id = endpointId(end);
  const pin = supplyPin.exec(end.pin.toUpperCase());
  return pin === null ? id : `${end.ref.toUpperCase()}.${pin[0]}`;
}
