import type { Adoption } from '../adopt.ts';

/** JSON output of `adopt`. */
export function adoptDocument(adoption: Adoption): Record<string, unknown> {
  return {
    format: 1,
    roles: adoption.roles.map(({ role, places, why }) => ({ role, places, why })),
    unplaced: adoption.unplaced,
    missing: adoption.missing,
    leaks: adoption.leaks,
    leftOut: adoption.leftOut,
    written: adoption.written,
  };
}
