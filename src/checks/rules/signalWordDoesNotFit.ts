import type { FoundHazard, HeardCaution } from '#core/hazard.ts';
import { type SignalWord, signalWords } from '#core/step.ts';
import { slugOf } from '#notation/names.ts';
import { cautionFor } from '#prose/cautions/library.ts';
import { tellsElectrocution, tellsInjury } from '#prose/cautions/messages.ts';
import { defineCheck, type FindingDraft } from '../defineCheck.ts';
import { hazardsThatBite } from '../hazardsThatBite.ts';
import { cautionsOf, type StatedCaution } from '../statedCautions.ts';

export const signalWordDoesNotFit = defineCheck({
  id: 'signal-word-does-not-fit',
  title: 'A signal word is as grave as what it warns of.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'A word that is too weak is read over, and one that is too strong wears the others out.',
  basis: 'meanings of DANGER, WARNING, CAUTION and NOTICE in ANSI Z535.4',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build, facts }) {
    const hazards = hazardsThatBite(build, facts.hazards);
    const told = new Set<string>();
    for (const found of hazards) yield* weakOnes(found, told);
    for (const caution of cautionsOf(build, facts)) {
      const least = leastOf(caution.message);
      if (least === null || signalWords.indexOf(caution.word) <= signalWords.indexOf(least)) continue;
      if (!told.has(caution.place.quote)) yield weak(caution, least, what(least));
    }
    yield* strongOnes(hazards);
  },
  examples: {
    passes: [
      {
        title: 'a warning of fire, a caution of burns, a notice of damage',
        files: {
          'guide.md':
            '# Bike light\n\n## Connect the cell\n\n- Parts: BT1\n- Warning: A lithium cell catches fire when it is shorted. Keep its ends apart.\n- Notice: Wrong polarity destroys D1. Check it twice.\n- Caution: The cap gets hot and can burn fingers. Let it cool.\n\nPlug the cell in.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,"Li-ion cell 18650, protected"\nD1,1,White LED\n',
        },
      },
      {
        title: 'plain words have no signal word to judge',
        files: {
          'guide.md':
            '# Bike light\n\n## Connect the cell\n\n- Parts: BT1\n- Power: off → on\n\nNever short a lithium cell: it can catch fire. Plug the cell in.\n',
          'parts.csv': 'Reference,Quantity,Description\nBT1,1,"Li-ion cell 18650, protected"\n',
        },
      },
    ],
    fails: [
      {
        title: 'CAUTION for mains',
        files: {
          'guide.md':
            '# Lamp switch\n\n## Wire the inlet\n\n- Parts: J1\n- Caution: Mains voltage gives a fatal shock. Unplug first and let a licensed person check it.\n\nScrew the live wire to J1.\n',
          'parts.csv': 'Reference,Quantity,Description\nJ1,1,"Mains inlet, IEC C14, with fuse"\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'WARNING' }],
      },
      {
        title: 'NOTICE for an injury',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Notice: The iron burns skin. Hold its handle.\n\nSolder D1. Do not breathe the fumes.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'CAUTION' }],
      },
      {
        title: 'an alert for static',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the switch\n\n- Parts: Q1\n- Warning: Static charge destroys Q1. Touch a grounded part first.\n\nPush Q1 into the breadboard.\n',
          'parts.csv': 'Reference,Quantity,Description\nQ1,1,N-channel MOSFET\n',
        },
        expect: [{ file: 'guide.md', line: 6, words: 'NOTICE' }],
      },
    ],
  },
});

function* weakOnes(found: FoundHazard, told: Set<string>): Iterable<FindingDraft> {
  if (found.cover !== 'weak') return;
  const entry = cautionFor(found.hazard);
  const caution = found.cautions.find(hasWord);
  if (caution === undefined) return;
  told.add(caution.place.quote);
  yield weak(caution, entry.word, entry.name);
}

function weak(caution: StatedCaution, least: SignalWord, subject: string): FindingDraft {
  return {
    subjects: [caution.step === null ? 'build:cautions' : `step:${caution.step}`],
    mark: slugOf(`${caution.word} ${caution.message}`).slice(0, 40),
    sides: [caution.place],
    message: `${caution.word.toUpperCase()} stands before a message about ${subject}; its meaning asks for ${least.toUpperCase()} at least.`,
    consequence: 'A builder takes the hazard for a smaller one than it is.',
    remedy: `Write ${least.toUpperCase()} instead.`,
  };
}

/** What a message tells of people coming to harm asks for a word of its own, whatever the hazard. */
function leastOf(message: string): SignalWord | null {
  return tellsElectrocution(message) ? 'warning' : tellsInjury(message) ? 'caution' : null;
}

function what(least: SignalWord): string {
  return least === 'warning' ? 'a deadly shock' : 'an injury';
}

/** Cautions whose word is graver than their one hazard can be. */
function* strongOnes(hazards: readonly FoundHazard[]): Iterable<FindingDraft> {
  for (const { hazard, cautions } of hazards) {
    const { mostWord, name } = cautionFor(hazard);
    for (const caution of cautions.filter(hasWord)) {
      const isAlone = !hazards.some(
        (other) =>
          other.hazard !== hazard &&
          cautionFor(other.hazard).mostWord !== mostWord &&
          other.cautions.some(({ place }) => place.span[0] === caution.place.span[0]),
      );
      const isStrong = signalWords.indexOf(caution.word) < signalWords.indexOf(mostWord);
      if (!isStrong || !isAlone || (mostWord === 'notice' && tellsInjury(caution.message))) continue;
      yield {
        subjects: [caution.step === null ? 'build:cautions' : `step:${caution.step}`],
        mark: `strong-${hazard}`,
        weight: 'tidy',
        sides: [caution.place],
        message: `${caution.word.toUpperCase()} stands before a message about ${name}; its meaning asks for no more than ${mostWord.toUpperCase()}.`,
        consequence: 'A builder who finds strong words before small things reads over the next one.',
        remedy: `Write ${mostWord.toUpperCase()} instead.`,
      };
      break;
    }
  }
}

function hasWord(caution: HeardCaution): caution is HeardCaution & { readonly word: SignalWord } {
  return caution.word !== null;
}
