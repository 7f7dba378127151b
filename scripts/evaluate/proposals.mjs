// What is read out of the words of steps, against labels made by hand: proposals FOLDER LABELS [FOLDER LABELS …].
import { ensureBuilt } from '../lib/fresh.mjs';
import { program, readLabels, share } from '../lib/labels.mjs';

const limits = [0.4, 0.5, 0.55, 0.6, 0.65, 0.7, 0.8, 0.9];
/** The limit above which `confirm --all` writes; errors are listed for this one. */
const usual = 0.6;

export function evaluate(places) {
  if (places.length < 2 || places.length % 2 !== 0) {
    process.stderr.write('Usage: npm run evaluate -- proposals FOLDER LABELS [FOLDER LABELS …]\n');
    return 2;
  }
  ensureBuilt();
  const all = [];
  for (let at = 0; at < places.length; at += 2) {
    const pair = compare(places[at], places[at + 1]);
    print(places[at + 1], [pair]);
    all.push(pair);
  }
  if (all.length > 1) print('together', all);
  return 0;
}

/** Each proposal and each label of one folder, by what it is about. */
function compare(folder, file) {
  const { labels, keyOf } = readLabels(folder, file);
  const { proposals } = program('confirm', folder);
  const rowOf = new Map(
    program('parts', folder).parts.map(({ id, file: list, row }) => [`part:${id}`, `${keyOf(list)}:${row}`]),
  );
  const headings = new Map(
    program('rehearse', folder).steps.map(({ id, place }) => [id, `${keyOf(place.file)}:${place.line}`]),
  );
  const steps = new Map(labels.steps.map((step) => [`${step.file}:${step.line}`, step]));
  return {
    parts: judged(
      'parts',
      (proposal) => rowOf.get(proposal.about) ?? '?',
      (step) => step.parts.map((part) => ({ thing: `${part.file}:${part.line}`, sure: part.sure && step.sure })),
    ),
    tools: judged(
      'tools',
      (proposal) => proposal.item,
      (step) =>
        step.tools.map(({ tool, sure, material }) => ({ thing: tool, sure: sure && step.sure && material !== true })),
    ),
  };

  function judged(label, thingOf, labelled) {
    const made = proposals
      .filter((proposal) => proposal.label === label)
      .map((proposal) => {
        const at = headings.get(proposal.step);
        const step = steps.get(at);
        const thing = thingOf(proposal);
        const match = step === undefined ? undefined : labelled(step).find((one) => isSame(one.thing, thing));
        const isOpen = match === undefined ? step?.sure === false : !match.sure;
        const lines = proposal.places.map(({ line }) => line).join(', ');
        return {
          at,
          thing,
          lines,
          confidence: proposal.confidence,
          verdict: isOpen ? 'open' : match === undefined ? 'wrong' : 'right',
        };
      });
    const wanted = [...steps].flatMap(([at, step]) =>
      labelled(step)
        .filter(({ sure }) => sure)
        .map(({ thing }) => ({ at, thing })),
    );
    return { made, wanted };
  }
}

function print(title, pairs) {
  const lines = [title];
  for (const label of ['parts', 'tools']) {
    const made = pairs.flatMap((pair) => pair[label].made);
    const wanted = pairs.flatMap((pair) => pair[label].wanted);
    lines.push(`  ${label}: ${wanted.length} labelled for certain`);
    for (const limit of limits) {
      const kept = made.filter(({ confidence }) => confidence >= limit);
      const right = kept.filter(({ verdict }) => verdict === 'right').length;
      const wrong = kept.filter(({ verdict }) => verdict === 'wrong').length;
      const found = wanted.filter((one) => isFound(one, kept)).length;
      lines.push(
        `    at ${limit.toFixed(2)}: precision ${share(right, right + wrong)} (${right} of ${right + wrong}), recall ${share(found, wanted.length)} (${found} of ${wanted.length})`,
      );
    }
    if (pairs.length > 1) continue;
    const kept = made.filter(({ confidence }) => confidence >= usual);
    for (const { at, thing, lines: where, confidence } of kept.filter(({ verdict }) => verdict === 'wrong'))
      lines.push(`    wrong at ${usual}: step ${at}, ${thing}, after line ${where} (${confidence})`);
    for (const one of wanted.filter((label) => !isFound(label, kept))) {
      const below = made.find(({ at, thing }) => at === one.at && isSame(one.thing, thing));
      lines.push(
        `    missed at ${usual}: step ${one.at}, ${one.thing}${below === undefined ? '' : ` (only ${below.confidence})`}`,
      );
    }
  }
  process.stdout.write(`${lines.join('\n')}\n`);
}

function isFound(wanted, made) {
  return made.some(({ at, thing }) => at === wanted.at && isSame(wanted.thing, thing));
}

/** The same place, or two names of which one holds all words of the other. */
function isSame(a, b) {
  if (a === b) return true;
  if (a.includes(':') || b.includes(':')) return false;
  const [few, many] = [wordsOf(a), wordsOf(b)].sort((one, other) => one.length - other.length);
  return few.length > 0 && few.every((word) => many.includes(word));
}

function wordsOf(name) {
  return name
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map((word) => word.replace(/(?<=...)s$/, ''));
}
