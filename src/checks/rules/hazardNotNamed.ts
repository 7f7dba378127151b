import type { Build } from '#core/build.ts';
import type { Edit } from '#core/edit.ts';
import type { Weight } from '#core/finding.ts';
import type { FoundHazard } from '#core/hazard.ts';
import { editFacts } from '#formats/guide/editFacts.ts';
import { cautionFor, type LibraryCaution, wordingOf } from '#prose/cautions/library.ts';
import { defineCheck } from '../defineCheck.ts';
import { hazardsThatBite } from '../hazardsThatBite.ts';
import { stepName } from '../say.ts';

export const hazardNotNamed = defineCheck({
  id: 'hazard-not-named',
  title: 'Every listed hazard that the build brings with it is named before the work.',
  weight: 'slows',
  audience: 'builder',
  firm: true,
  words: 'English',
  why: 'Who builds for the first time does not know what can hurt them.',
  basis: 'IEC/IEEE 82079-1 asks for warnings before the step; signal words as in ANSI Z535.4',
  needs: { subject: ['guide'], witnesses: [] },
  *run({ build, facts }) {
    for (const found of hazardsThatBite(build, facts.hazards)) {
      if (found.cover !== 'uncovered') continue;
      const entry = cautionFor(found.hazard);
      const where = found.step === null ? 'before the work' : `in ${stepName(build, found.step)}, before the work`;
      const other = entry.defer.includes('licensed-person') ? ', and leave the work to a licensed person' : '';
      yield {
        subjects: [found.step === null ? 'build:cautions' : `step:${found.step}`],
        mark: found.hazard,
        sides: found.places.slice(0, 3),
        basis: found.basis,
        weight: weightOf(entry),
        message: `The build brings ${entry.name} with it (${found.why}), and no caution says so.`,
        consequence: `${entry.hazard} ${entry.consequence}`,
        remedy: `Write a ${entry.word.toUpperCase()} ${where}${other}: ${wordingOf(entry)}`,
        mend: mendOf(build, found, entry),
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'cautions in the step, before the work',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Tools: soldering iron\n- Caution: The tip of the iron is hot and burns skin. Hold it by its handle.\n- Caution: Solder smoke irritates the lungs. Work at an open window.\n\nSolder D1 to the board.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\n',
        },
      },
      {
        title: 'a section on safety ahead of all steps, in plain words',
        files: {
          'guide.md':
            '# Night light\n\n## Safety\n\nThe iron gets hot and burns fingers. Work in a well-ventilated room.\n\n## Fit the lamp\n\nSolder D1 to the board.\n\n## Close it\n\nPress the lid on.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\n',
        },
      },
      {
        title: 'words that only look like hazards',
        files: {
          'guide.md':
            '# Desk light\n\nNo soldering needed, and no batteries: a mains adapter with 5 V USB output feeds it. The lid comes laser-cut from a shop.\n\n## Fit the lamp\n\n- Parts: D1, U1\n\nPush D1 into the breadboard. The motor driver chip needs no motor here.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nU1,1,Motor driver chip\nPS1,1,"USB power adapter, 5 V, for the mains"\nSW1,1,Knife switch\n',
        },
      },
    ],
    fails: [
      {
        title: 'a lithium cell that nobody warns of',
        files: {
          'guide.md':
            '# Bike light\n\n## Fit the lamp\n\n- Parts: D1\n- Power: off\n\nPush D1 in.\n\n## Connect the cell\n\n- Parts: BT1\n- Power: off → on\n\nPlug the cell in.\n',
          'parts.csv':
            'Reference,Quantity,Description\nD1,1,White LED 5 mm\nBT1,1,"Li-ion cell 18650, protected, 2600 mAh"\n',
        },
        expect: [{ file: 'guide.md', line: 12, words: 'a lithium cell or pack' }],
      },
      {
        title: 'soldering without a word of heat and smoke is one finding for each, however many steps solder',
        files: {
          'guide.md':
            '# Night light\n\n## Fit the lamp\n\n- Parts: D1\n- Tools: soldering iron\n\nSolder D1 to the board.\n\n## Fit the switch\n\n- Parts: SW1\n- Tools: soldering iron\n\nSolder SW1 to the board.\n',
          'parts.csv': 'Reference,Quantity,Description\nD1,1,White LED 5 mm\nSW1,1,Switch\n',
          'tools.csv': 'tool,needed\nSoldering iron,yes\n',
        },
        expect: [
          { file: 'guide.md', line: 8, words: 'a hot soldering iron' },
          { file: 'guide.md', line: 8, words: 'solder smoke' },
        ],
      },
      {
        title: 'mains that is only in the list of parts',
        files: {
          'guide.md': '# Lamp switch\n\n## Fit the relay\n\n- Parts: K1\n- Power: off\n\nScrew K1 down.\n',
          'parts.csv': 'Reference,Quantity,Description\nK1,1,Relay module\nJ1,1,"Mains inlet, IEC C14, with fuse"\n',
        },
        expect: [{ file: 'parts.csv', line: 3, words: 'mains voltage' }],
      },
    ],
  },
});

/** Grave hazards halt, where they are certain; of static nobody comes to harm, and of needles everybody knows. */
function weightOf({ grave, word, everyday }: LibraryCaution): Weight {
  return grave ? 'halts' : word === 'notice' || everyday ? 'tidy' : 'slows';
}

/** The library's own words as a fact of the step, for the maker to change. */
function mendOf(build: Build, { step }: FoundHazard, entry: LibraryCaution): Edit | null {
  const section = build.instructions.sections.find(({ id, role }) => id === step && role === 'step');
  const source = section === undefined ? undefined : build.texts.get(section.file);
  if (section === undefined || source === undefined || section.depth === 0) return null;
  return editFacts(source, section, [{ label: entry.word, value: wordingOf(entry) }]);
}
