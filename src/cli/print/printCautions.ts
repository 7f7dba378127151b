import type { CautionListing } from '#app/listCautions.ts';
import type { Build } from '#core/build.ts';
import type { FoundHazard } from '#core/hazard.ts';
import type { Place } from '#core/place.ts';
import { cautionFor, wordingOf } from '#prose/cautions/library.ts';
import { firstLine, safe, textWidth, wrapped } from './layout.ts';

/** The hazards of a build: those that lack a caution first, with words for one. */
export function printCautions({ build, hazards, note }: CautionListing): string {
  const said = note === null ? '' : `${wrapped(note, '')}\n`;
  if (hazards.length === 0) return said;
  const open = hazards.filter(({ cover }) => cover !== 'covered');
  const covered = hazards.filter(({ cover }) => cover === 'covered');
  const parts = [
    said,
    ...open.map((hazard) => printOpen(hazard, build)),
    covered.length === 0 ? '' : `Named in time\n${covered.map(printCovered).join('\n')}\n`,
    `${wrapped('These are prompts from a list, and no approval: the data sheets, local law and a licensed person decide.', '')}\n`,
  ];
  return parts.filter((part) => part !== '').join('\n');
}

const states: Readonly<Record<Exclude<FoundHazard['cover'], 'covered'>, string>> = {
  uncovered: 'no caution names it',
  late: 'the caution comes after the work',
  weak: 'the signal word is too weak',
  'cannot-tell': 'whether a caution names it cannot be told',
};

function printOpen({ hazard, step, places, why, cover, cautions }: FoundHazard, build: Build): string {
  const entry = cautionFor(hazard);
  const heading = build.instructions.sections.find(({ id }) => id === step)?.heading;
  const lines = [
    wrapped(`${capital(entry.name)}: ${cover === 'covered' ? '' : states[cover]}`, ''),
    wrapped(`${heading === undefined ? '' : `Step ‘${safe(heading)}’, `}${where(places[0])}: ${safe(why)}`, '   '),
    ...cautions.slice(0, 1).map(({ place }) => wrapped(`Said in ${where(place)}`, '   ')),
    wrapped(`${entry.word.toUpperCase()}: ${wordingOf(entry)}`, '   '),
    entry.dated === null ? '' : wrapped(`These rules change; the words are of ${entry.dated}.`, '   '),
  ];
  return `${lines.filter((line) => line !== '').join('\n')}\n`;
}

function printCovered({ hazard, cautions }: FoundHazard): string {
  const entry = cautionFor(hazard);
  const caution = cautions.find(({ when }) => when === 'before');
  if (caution === undefined) return `   ${entry.name}`;
  const word = caution.word === null ? '' : `${caution.word.toUpperCase()}: `;
  return `   ${entry.name} (${where(caution.place)})\n      ${firstLine(`${word}${caution.message}`, textWidth() - 8)}`;
}

function where(place: Place): string {
  return place.kind === 'text' ? `${safe(place.file)}, line ${place.line}` : safe(place.file);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
