/** What a physical quantity measures, each with the SI unit in which `si` counts. */
export const siUnits = {
  resistance: 'Ω',
  capacitance: 'F',
  inductance: 'H',
  voltage: 'V',
  current: 'A',
  power: 'W',
  frequency: 'Hz',
  charge: 'A·s',
  energy: 'J',
  length: 'm',
  mass: 'kg',
  time: 's',
  temperature: '°C',
  tolerance: '1',
} as const;

export type QuantityKind = keyof typeof siUnits;

/** A physical quantity: `si` in the unit of its kind (tolerance as a fraction, temperature in °C), `text` as written. */
export interface Quantity {
  readonly kind: QuantityKind;
  readonly si: number;
  readonly text: string;
}

/** How many, or how much, of a part. `unit` is 'pcs' for things that are counted; `n` is finite and not negative. */
export interface Amount {
  readonly n: number;
  readonly unit: string;
  /** True for '~30 cm' and 'as needed'. */
  readonly approximate: boolean;
}

/** `currency` is an ISO 4217 code, or null where the text does not tell. */
export interface Money {
  readonly amount: number;
  readonly currency: string | null;
}
