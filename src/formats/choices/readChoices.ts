import type { Problem } from '#core/problem.ts';
import type { Callout, PicturePoint, ShotChoice } from '#core/shotChoice.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import { readText, readWords, type SettingContext } from '../settings/settingValue.ts';
import { readYaml, type YamlEntry, type YamlReader, type YamlValue } from '../settings/yamlRecord.ts';

/**
 * Reads `shots.yaml`: under `shots`, one entry for each shot, keyed by the first digits of the SHA-256 of its content,
 * with `path`, `chosen`, `alt`, `caption`, `steps` and `callouts`. Entries that cannot be read are passed over and
 * said.
 */
export function readChoices(source: SourceText): { choices: ShotChoice[]; problems: Problem[] } {
  const record = readYaml(source, [0, source.text.length]);
  const problems = [...record.problems];
  const shots = record.entries?.find(({ key }) => key === 'shots');
  if (shots === undefined) {
    if (!record.isEmpty && problems.length === 0) problems.push(noShots(source));
    return { choices: [], problems };
  }
  const choices = (record.reader.entriesOf(shots.value) ?? []).flatMap((entry) =>
    readChoice(entry, record.reader, problems),
  );
  return { choices, problems };
}

function noShots(source: SourceText): Problem {
  return {
    place: placeOf(source, [0, 0]),
    message: 'The choices were expected under `shots:`, but the file has no such key.',
    remedy: 'Put the entries under `shots:`, each keyed by the first digits of its content hash.',
  };
}

function readChoice({ key, place, value }: YamlEntry, reader: YamlReader, problems: Problem[]): ShotChoice[] {
  if (!/^[0-9a-f]{12,64}$/i.test(key)) {
    problems.push({
      place,
      message: `'${key}' was expected to be at least 12 digits of a SHA-256, by which the shot is known.`,
      remedy: 'Use the digits that `sha256sum` prints for the file.',
    });
    return [];
  }
  const fields = new Map((reader.entriesOf(value) ?? []).map((field) => [field.key.toLowerCase(), field.value]));
  const context: SettingContext = {
    reader,
    misfit(at, expected) {
      problems.push({
        place: at === null ? place : reader.placeOf(at),
        message: `This was expected to be ${expected}, but reads otherwise.`,
        remedy: `Write it as ${expected}. Until then it is not used.`,
      });
    },
  };
  const words = (name: string): string | null => {
    const field = fields.get(name) ?? null;
    return field === null || reader.isNothing(field) ? null : readText(field, context);
  };
  const marks = fields.get('callouts') ?? null;
  return [
    {
      hash: key.toLowerCase(),
      path: words('path'),
      chosen: choiceOf(words('chosen'), fields.get('chosen') ?? null, context),
      alt: words('alt'),
      caption: words('caption'),
      steps: fields.has('steps') ? readWords(fields.get('steps') ?? null, context, 'a list of steps') : [],
      callouts:
        marks === null || reader.isNothing(marks)
          ? []
          : (reader.itemsOf(marks) ?? [marks]).flatMap((mark) => readCallout(mark, context)),
      place,
    },
  ];
}

function choiceOf(said: string | null, field: YamlValue, context: SettingContext): boolean | null {
  if (said === null) return null;
  if (/^(?:yes|true)$/i.test(said)) return true;
  if (/^(?:no|false)$/i.test(said)) return false;
  context.misfit(field, 'yes or no');
  return null;
}

const forms = 'ring, box, arrow, label or number with fractions of the picture, such as `ring: [0.3, 0.4, 0.1, 0.1]`';

function readCallout(mark: YamlValue, context: SettingContext): Callout[] {
  const entries = context.reader.entriesOf(mark) ?? [];
  const said = entries.find(({ key }) => key === 'words')?.value ?? null;
  const words = said === null ? null : readText(said, context);
  for (const { key, value } of entries) {
    const numbers = (context.reader.itemsOf(value) ?? []).map((item) => Number(context.reader.textOf(item)));
    const callout = calloutOf(key, numbers, words);
    if (callout !== null) return [callout];
  }
  context.misfit(mark, forms);
  return [];
}

/** Null where the numbers are not as many as the kind needs, or lie outside the picture. */
function calloutOf(kind: string, numbers: readonly number[], words: string | null): Callout | null {
  if (!numbers.every((number) => number >= 0 && number <= 1)) return null;
  const [a, b, c, d] = numbers;
  const point = (x: number | undefined, y: number | undefined): PicturePoint => ({ x: x ?? 0, y: y ?? 0 });
  if (numbers.length === 2 && (kind === 'label' || kind === 'number')) return { kind, at: point(a, b), words };
  if (numbers.length !== 4) return null;
  switch (kind) {
    case 'ring':
      return { kind, centre: point(a, b), half: point(c, d), words };
    case 'box':
      return { kind, corner: point(a, b), size: point(c, d), words };
    case 'arrow':
      return { kind, from: point(a, b), to: point(c, d), words };
    default:
      return null;
  }
}
