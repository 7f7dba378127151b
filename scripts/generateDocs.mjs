// Writes docs/checks.md from the files of the checks, and docs/commands.md from the program's own help. With --check
// it only says whether one of them is stale (exit status 1).

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundleForNode } from './lib/bundleForNode.mjs';
import { ensureBuilt, ensureInstalled, root } from './lib/fresh.mjs';

ensureInstalled();
ensureBuilt();
const stale = [];
const pages = { 'docs/checks.md': await checksPage(), 'docs/commands.md': commandsPage() };
for (const [file, text] of Object.entries(pages)) {
  if (currentText(file) === text) continue;
  stale.push(file);
  if (!process.argv.includes('--check')) writeFileSync(path.join(root, file), text);
}
if (process.argv.includes('--check') && stale.length > 0) {
  console.error(`${stale.join(' and ')} no longer say what the program does; run: node scripts/generateDocs.mjs`);
  process.exitCode = 1;
}

async function checksPage() {
  // Packages are found from inside the checkout alone.
  const folder = mkdtempSync(path.join(root, 'node_modules/.cache-checks-'));
  try {
    await bundleForNode({ registry: 'src/checks/registry.ts' }, folder);
    const { checks } = await import(pathToFileURL(path.join(folder, 'registry.js')).href);
    return pageOf(checks);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function pageOf(checks) {
  const groups = [
    [
      'Checks that keep a builder from a standstill',
      (check) => check.audience === 'builder' && check.weight === 'halts',
    ],
    ['Checks that save a builder time and doubt', (check) => check.audience === 'builder' && check.weight === 'slows'],
    ['Checks that make a guide pleasant to follow', (check) => check.audience === 'builder' && check.weight === 'tidy'],
    ['Checks for whoever publishes', (check) => check.audience === 'publisher'],
  ];
  return [
    '# The checks',
    '',
    `Made from the files of the ${checks.length} checks; each one's examples are run by the tests. *Halts* stops a builder or`,
    'breaks the build, *slows* costs time, *tidy* costs looks. A finding can weigh less than its check: what was only read',
    'from sentences halts nobody.',
    '',
    '`twicebuilt check DIR --all` says for every check whether it ran, did not apply, or could not tell.',
    ...groups.flatMap(([title, belongs]) => ['', `## ${title}`, ...checks.filter(belongs).flatMap(sectionOf)]),
    '',
  ].join('\n');
}

function sectionOf(check) {
  const marks = [check.weight, check.words === 'English' && 'reads English', check.firm && 'stays as it weighs'];
  const example = check.examples.fails.find(({ files, expect }) => excerptOf(files, expect) !== null);
  const excerpt = example && excerptOf(example.files, example.expect);
  return [
    '',
    `### ${check.id}`,
    '',
    `${sentence(check.title)} *(${marks.filter(Boolean).join(', ')})*`,
    '',
    `${sentence(check.why)} Basis: ${check.basis}`.replace(/([^.])$/, '$1.'),
    ...(excerpt
      ? ['', `It speaks, for instance, where ${excerpt.file} says:`, '', ...excerpt.lines.map((line) => `    ${line}`)]
      : []),
  ];
}

/** The lines of an example that the finding points at. */
function excerptOf(files, expected) {
  const at = expected.find(({ file, line }) => line !== undefined && typeof files[file] === 'string');
  if (at === undefined) return null;
  const line = files[at.file].split('\n')[at.line - 1];
  return line === undefined || line.trim() === '' || line.length > 160 ? null : { file: at.file, lines: [line] };
}

function sentence(text) {
  const trimmed = text.trim();
  return /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}

function commandsPage() {
  const overview = help([]);
  const names = [...overview.matchAll(/^ {2}([a-z]+) {2,}/gm)].map(([, name]) => name);
  return [
    '# The commands',
    '',
    'Made from what `twicebuilt help` says. Exit status: 0 done; 1 done, and something halts a builder; 2 could not be',
    'carried out. What `--json` writes is told in [json.md](json.md).',
    ...names.flatMap((name) => ['', `## ${name}`, '', '```text', help([name]).trimEnd(), '```']),
    '',
  ].join('\n');
}

function help(words) {
  const { stdout, status } = spawnSync(process.execPath, ['bin/twicebuilt.mjs', 'help', ...words], {
    cwd: root,
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`help ${words.join(' ')} ended with ${status}`);
  return stdout;
}

function currentText(file) {
  try {
    return readFileSync(path.join(root, file), 'utf8');
  } catch {
    return '';
  }
}
