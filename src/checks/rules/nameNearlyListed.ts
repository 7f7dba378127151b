import type { Build } from '#core/build.ts';
import type { Edit } from '#core/edit.ts';
import type { Part } from '#core/part.ts';
import type { TextPlace } from '#core/place.ts';
import { remember, rememberFor } from '#core/remember.ts';
import { refClass } from '#notation/refs.ts';
import { parseValue } from '#notation/value.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import { spokenTexts } from '#prose/mentions/spokenTexts.ts';
import { placeInside } from '#prose/placeInside.ts';
import { defineCheck } from '../defineCheck.ts';
import { groupedBy } from '../groupedBy.ts';
import { fittedRows, rowName, rowWords } from '../partWords.ts';

export const nameNearlyListed = defineCheck({
  id: 'name-nearly-listed',
  title: 'The text calls parts by the names that the list has for them.',
  weight: 'slows',
  audience: 'builder',
  words: 'English',
  why: 'One swapped letter in the number of a chip names another chip, or none.',
  basis: 'common practice: type numbers of the steps that differ in one character from one of the list',
  needs: { subject: ['steps', 'parts'], witnesses: [] },
  *run({ build }) {
    const names = listedNames(fittedRows(build));
    const elsewhere = [...build.texts.values()]
      .filter(({ file }) => !build.instructions.sections.some((section) => section.file === file))
      .map(({ text }) => plain(text))
      .join('\n');
    const found = mentionsIn(build).flatMap((mention) => {
      if (names.has(plain(mention.name)) || elsewhere.includes(plain(mention.name))) return [];
      const near = [...names].filter(([name]) => isOneSlip(plain(mention.name), name));
      const [only, another] = near;
      if (only === undefined || another !== undefined || talksOfBoth.test(mention.sentence)) return [];
      const { written, part } = only[1];
      return plain(mention.sentence).includes(only[0]) ? [] : [{ ...mention, written, part }];
    });
    for (const [name, all] of groupedBy(found, ({ name }) => name)) {
      const [first] = all;
      if (first === undefined) continue;
      yield {
        subjects: [`part:${first.part.id}`],
        mark: name,
        sides: [...all.slice(0, 4).map(({ place }) => place), first.part.place],
        basis: 'read',
        message: `The text speaks of ${name}; no list holds it, and ${rowName(first.part)} is called ${first.written} there.`,
        consequence: 'A builder looks for a part that is not there, or buys the wrong one.',
        remedy: `Write ${first.written}, or correct the list.`,
        mend: renamed(build, all, first.written),
      };
    }
  },
  examples: {
    passes: [
      {
        title: 'the same name written otherwise, families, alternatives and pins',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nFit the SCD 30 and the WS2812. Use a 1N4007 instead where you have one. Wire GPIO21 to GPIO22, drive the M3x10 and take 20 AWG. The LM7806 is unlike the LM7805.\n',
          'parts.csv':
            'Quantity,Description\n1,Sensor SCD-30\n1,Ring WS2812B\n1,Diode 1N4001\n1,Regulator LM7805\n1,Screw M3x12\n1,Wire 22AWG\n',
        },
      },
      {
        title: 'it is a name of the code, or near to two',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nFit the BMP280 and the LM7807.\n',
          'parts.csv': 'Quantity,Description\n1,Sensor BME280\n1,Regulator LM7805\n1,Regulator LM7809\n',
          'main.cpp': '#include "BMP280.h"\nvoid setup() {}\nvoid loop() {}\n',
        },
      },
    ],
    fails: [
      {
        title: 'two letters swapped, twice',
        files: {
          'guide.md':
            '# Lamp\n\n## Fit it\n\nFit the SDC-30 to the base.\n\n## Wire it\n\nSolder the wires to the SDC-30.\n',
          'parts.csv': 'Quantity,Description\n1,Sensor SCD-30\n1,Base\n',
        },
        expect: [{ file: 'guide.md', line: 5, column: 9, words: 'SDC-30' }],
      },
      {
        title: 'a digit too few',
        files: {
          'guide.md': '# Lamp\n\n## Fit it\n\nPress the 74AHC125N into its socket.\n',
          'parts.csv': 'Quantity,Description,Maker part number\n1,Buffer,74AHCT125N\n1,Base,\n',
        },
        expect: [{ file: 'guide.md', line: 5, words: '74AHCT125N' }],
      },
    ],
  },
});

const token = /(?<![\p{L}\p{N}#./_@-])[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)*(?![\p{L}\p{N}_/@]|\.\p{L})/gu;
/** Sentences that speak of another part on purpose. */
const talksOfBoth =
  /\b(?:or|instead|similar|alternatives?|replac\w*|older|earlier|previous|unlike|both|versions?|variants?|compatible|any|like|not|never|also|too)\b/i;
const namesNoPart =
  /^(?:GPIO|IO|GP|PIN|UART|I2C|SPI|ADC|DAC|USB|HDMI|RJ|CAT|IP|REV|VER|STEP|FIG|PAGE|ISO|DIN|EN|IEC|UL|WIFI|BT|M)\d|\d+X\d|AWG|^\d+(?:ST|ND|RD|TH)$|^0X/;

function plain(text: string): string {
  return text.toUpperCase().replace(/(?<=[A-Z\d])[- ](?=[A-Z\d])/g, '');
}

/** A word of letters and digits that is neither a value, a size, a pin nor a reference. */
function isTypeName(word: string): boolean {
  const bare = plain(word);
  if (bare.length < 5 || (bare.match(/\d/g) ?? []).length < 2 || !/[A-Z]/.test(bare) || /[^A-Z\d]/.test(bare))
    return false;
  const isRef = refClass(word.toUpperCase()) !== null && /^[A-Z]{1,4}\d{1,4}$/.test(bare);
  return !namesNoPart.test(bare) && !isRef && parseValue(word) === null;
}

type ListedNames = ReadonlyMap<string, { readonly written: string; readonly part: Part }>;

const listedNames = rememberFor((rows: readonly Part[]): ListedNames => {
  const names = new Map<string, { written: string; part: Part }>();
  for (const part of rows) {
    for (const [written] of rowWords(part).matchAll(token)) {
      if (isTypeName(written) && !names.has(plain(written))) names.set(plain(written), { written, part });
    }
  }
  return names;
});

const typeNamesIn = remember((sentence) =>
  [...sentence.matchAll(token)].flatMap(({ 0: name, index }) => (isTypeName(name) ? [{ name, index }] : [])),
);

interface Mention {
  readonly name: string;
  readonly sentence: string;
  readonly place: TextPlace;
}

function mentionsIn(build: Build): Mention[] {
  const refs = new Set(build.parts.flatMap((part) => part.refs));
  return spokenTexts(build).flatMap(({ words, place, step }) =>
    step === null
      ? []
      : sentencesOf(words).flatMap(({ text, start }) =>
          typeNamesIn(text).flatMap(({ name, index }): Mention[] => {
            if (refs.has(name.toUpperCase())) return [];
            const at = start + index;
            return [{ name, sentence: text, place: placeInside(place, at, at + name.length) }];
          }),
        ),
  );
}

/** One character swapped with its neighbour, changed, missing or too many; not at the end, where variants differ. */
function isOneSlip(said: string, name: string): boolean {
  if (said === name || Math.abs(said.length - name.length) > 1) return false;
  if (said.startsWith(name.slice(0, -1)) || name.startsWith(said.slice(0, -1))) return false;
  if (said.endsWith(name) || name.endsWith(said)) return false;
  let from = 0;
  while (said[from] === name[from]) from++;
  const [restSaid, restName] = [said.slice(from), name.slice(from)];
  const swapped = (restSaid[1] ?? '') + (restSaid[0] ?? '') + restSaid.slice(2);
  return (
    restSaid.slice(1) === restName.slice(1) ||
    restSaid.slice(1) === restName ||
    restSaid === restName.slice(1) ||
    swapped === restName
  );
}

function renamed(build: Build, all: readonly Mention[], written: string): Edit | null {
  const file = all[0]?.place.file ?? '';
  const source = build.texts.get(file);
  if (source === undefined || all.some(({ place }) => place.file !== file)) return null;
  return {
    file,
    base: source.hash,
    changes: all.map(({ place }) => ({ span: place.span, text: written })),
    why: `${all[0]?.name} becomes ${written}, as the parts list has it`,
  };
}
