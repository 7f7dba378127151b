import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Controller, DrivenPin } from '#core/facts.ts';

/** The pins that code uses, on the board that runs it. */
export function drivenPins(build: Build, controllers: readonly Claim<Controller>[]): DrivenPin[] {
  return controllers.flatMap(({ value: { ref, files } }) =>
    build.sources
      .filter(({ file }) => files.includes(file))
      .flatMap(({ pins }) =>
        pins.map(({ pin, name, uses, group, place, usedAt }) => ({ ref, pin, name, uses, group, place, usedAt })),
      ),
  );
}
