// The findings of `check` against problems that people marked by hand: findings FOLDER LABELS [FOLDER LABELS …].
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { ensureBuilt, root } from '../lib/fresh.mjs';
import { program, readLabels, share } from '../lib/labels.mjs';

export function evaluate(places) {
  if (places.length < 2 || places.length % 2 !== 0) {
    process.stderr.write('Usage: npm run evaluate -- findings FOLDER LABELS [FOLDER LABELS …]\n');
    return 2;
  }
  ensureBuilt();
  const all = [];
  for (let at = 0; at < places.length; at += 2) {
    const compared = compare(places[at], places[at + 1]);
    print(places[at + 1], [compared], true);
    all.push(compared);
  }
  if (all.length > 1) print('together', all, false);
  return 0;
}

const labelsFolder = path.join(root, 'tests/labels');
const kinds = JSON.parse(readFileSync(path.join(labelsFolder, 'kinds.json'), 'utf8')).checks;
const read = JSON.parse(readFileSync(path.join(labelsFolder, 'read.json'), 'utf8')).findings;

/** Each finding with the labelled problem that it reports, if any, and what a reader said of it otherwise. */
function compare(folder, file) {
  const { labels, keyOf } = readLabels(folder, file);
  const problems = labels.problems.map((problem) => ({
    ...problem,
    lines: new Set([problem, ...(problem.also ?? [])].map((place) => `${place.file}:${place.line}`)),
    page: problem.line === 1,
  }));
  const findings = program('check', folder, '--for', 'publisher').findings.map((finding) => {
    const places = finding.places.map((place) => ({ key: keyOf(place.file), line: place.line ?? null }));
    const meant = problems.filter(
      ({ about, lines, page, file: text }) =>
        (kinds[about] ?? []).includes(finding.check) &&
        places.some(({ key, line }) => lines.has(`${key}:${line}`) || (page && (key === text || key === '?'))),
    );
    const name = digestOf(finding.id);
    return { check: finding.check, audience: finding.audience, places, meant, name, judged: read[name] ?? null };
  });
  return { problems, findings };
}

function digestOf(id) {
  return createHash('sha256').update(id).digest('hex').slice(0, 10);
}

function print(title, compared, details) {
  const findings = compared.flatMap((one) => one.findings);
  const problems = compared.flatMap((one) => one.problems).filter(({ sure }) => sure);
  const found = new Set(findings.flatMap(({ meant }) => meant));
  const isTrue = ({ meant, judged }) => meant.length > 0 || judged === true;
  const open = findings.filter((finding) => !isTrue(finding) && finding.judged === null);
  const right = findings.filter(isTrue).length;
  const lines = [
    title,
    `  findings: ${findings.length}, of which ${right} true, ${findings.length - right - open.length} false, ${open.length} not yet read; precision ${share(right, findings.length - open.length)}`,
    `  problems marked for certain: ${problems.length}; found ${problems.filter((one) => found.has(one)).length}, recall ${share(problems.filter((one) => found.has(one)).length, problems.length)}`,
  ];
  for (const audience of ['builder', 'publisher']) {
    const own = problems.filter((problem) => problem.for === audience);
    lines.push(`    for the ${audience}: ${own.filter((one) => found.has(one)).length} of ${own.length}`);
  }
  const decidable = problems.filter(({ about }) => kinds[about] !== undefined);
  lines.push(
    `    of kinds that a check looks for: ${decidable.filter((one) => found.has(one)).length} of ${decidable.length}`,
  );
  if (details) {
    for (const { name, check, places } of open) lines.push(`    not read: ${name} ${check} ${where(places)}`);
    for (const finding of findings.filter(({ judged, meant }) => judged === false && meant.length === 0))
      lines.push(`    false: ${finding.name} ${finding.check} ${where(finding.places)}`);
    for (const { about, file, line } of problems.filter((one) => !found.has(one)))
      lines.push(`    missed: ${file}:${line} ${about}`);
  }
  process.stdout.write(`${lines.join('\n')}\n`);
}

function where(places) {
  return places.map(({ key, line }) => `${key}:${line ?? '-'}`).join(' ');
}
