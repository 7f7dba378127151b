import type { Judged } from '#core/assembled.ts';
import type { Claim } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import type { PartUse, Section } from '#core/step.ts';
import { actionsOfStep } from '#rehearsal/actionsOfStep.ts';
import { defineCheck } from '../defineCheck.ts';
import { listed, stepName } from '../say.ts';

export const tallBeforeFlat = defineCheck({
  id: 'tall-before-flat',
  title: 'Flat parts are soldered before tall ones on the same side of a board.',
  weight: 'tidy',
  audience: 'builder',
  words: 'English',
  why: 'With a tall part on the board, flat ones fall out when the board is turned over to solder them.',
  basis: 'common practice: from the lowest part to the tallest',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run(judged) {
    const steps = judged.build.instructions.sections.filter(
      (section) => section.role === 'step' && isSoldered(judged, section),
    );
    const firstTall = steps.findIndex((section) => usesOf(judged, section, isTall).length > 0);
    const tallStep = steps[firstTall];
    if (tallStep === undefined) return;
    const tall = usesOf(judged, tallStep, isTall);
    for (const section of steps.slice(firstTall + 1)) {
      const flat = usesOf(judged, section, isFlat);
      if (
        flat.length === 0 ||
        sideOf(judged, section) !== sideOf(judged, tallStep) ||
        boardOf(section) !== boardOf(tallStep)
      )
        continue;
      yield {
        subjects: [`step:${section.id}`],
        sides: [...flat, ...tall].flatMap(({ places }) => places).slice(0, 5),
        message: `The step ${stepName(judged.build, section.id)} solders ${named(flat)} after ${named(tall)}, which ${tall.length === 1 ? 'stands' : 'stand'} taller on the same side.`,
        consequence: 'The board no longer lies flat when it is turned over, and the flat parts fall out or sit askew.',
        remedy: `Move the flat parts before the step ${stepName(judged.build, tallStep.id)}.`,
      };
      return;
    }
  },
  examples: {
    passes: [
      {
        title: 'resistors, then the capacitor',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the resistors\n\n- Parts: R1\n\nSolder it.\n\n## Fit the capacitor\n\n- Parts: C1\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nC1,1,Electrolytic capacitor 100 µF\n',
        },
      },
      {
        title: 'another side, and a resistor that hangs on the wire',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the capacitor\n\n- Parts: C1\n- Side: component side\n\nSolder it.\n\n## Fit the resistor\n\n- Parts: R1\n- Side: underside\n\nSolder it.\n\n## Fit the other\n\n- Parts: LDR1\n- Side: component side\n\nSolder it.\n',
          'parts.csv':
            'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nC1,1,Electrolytic capacitor 100 µF\nLDR1,1,Photoresistor\n',
        },
      },
    ],
    fails: [
      {
        title: 'the capacitor first',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the capacitor\n\n- Parts: C1\n\nSolder it.\n\n## Fit the resistors\n\n- Parts: R1\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nR1,1,Resistor 150 Ω\nC1,1,Electrolytic capacitor 100 µF\n',
        },
        expect: [{ file: 'guide.md', line: 11, words: 'after C1' }],
      },
      {
        title: 'a relay, then diodes',
        files: {
          'guide.md':
            '# Switch box\n\n## Fit the relay\n\n- Parts: K1, R1\n- Side: top\n\nSolder both.\n\n## Fit the diode\n\n- Parts: D1\n- Side: top\n\nSolder it.\n',
          'parts.csv': 'Reference,Quantity,Description\nK1,1,Relay 5 V\nR1,1,Resistor 150 Ω\nD1,1,Diode 1N4148\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: 'D1 after K1' }],
      },
    ],
  },
});

function isSoldered({ facts }: Judged, { id }: Section): boolean {
  return actionsOfStep(facts, id).some(({ kind, told }) => told === 'do' && kind === 'solder');
}

function usesOf({ build, facts }: Judged, { id }: Section, fits: (part: Part) => boolean): Claim<PartUse>[] {
  return (facts.steps[id]?.uses ?? []).filter(({ value, basis }) => {
    const part = build.parts.find((one) => one.id === value.part);
    return basis === 'declared' && value.ref !== null && part !== undefined && fits(part);
  });
}

function isTall({ description, package: size }: Part): boolean {
  return (
    /\b(?:electrolytic|relay|terminal block|screw terminal|transformer|heat ?sink)\b/i.test(description) &&
    !isSurface(size)
  );
}

function isFlat({ description, package: size }: Part): boolean {
  return (
    /\b(?:resistor|diode)s?\b/i.test(description) &&
    !/\b(?:light|laser|photo\w*|LED|network|array|power|cement|wire-?wound|variable|upright)\b/i.test(description) &&
    !/^DO-?2/i.test(size ?? '') &&
    !isSurface(size)
  );
}

function isSurface(size: string | null): boolean {
  return size !== null && /^(?:SMD|SMT|0[246]0[123]|0805|1206|1210|SO[TDIJ]|MELF|MINIMELF|QFN)/i.test(size);
}

function sideOf({ facts }: Judged, { id }: Section): string {
  return facts.steps[id]?.side?.value.toLowerCase() ?? '';
}

/** Steps under different headings may build different boards. */
function boardOf({ parents }: Section): string {
  return parents.join('/');
}

function named(uses: readonly Claim<PartUse>[]): string {
  return listed([...new Set(uses.flatMap(({ value }) => value.ref ?? []))]);
}
