// Writes src/checks/registry.ts: one import for each file in src/checks/rules. With --check it only says whether
// the list is stale (exit status 1).
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const checks = new URL('../src/checks/', import.meta.url);
const registry = fileURLToPath(new URL('registry.ts', checks));

const names = readdirSync(fileURLToPath(new URL('rules/', checks)))
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
  .map((file) => file.slice(0, -3))
  .sort((a, b) => (a.toLowerCase() < b.toLowerCase() ? -1 : 1));
const text = registryText(names);

if (process.argv.includes('--check')) {
  if (currentText() !== text) {
    console.error(
      'src/checks/registry.ts does not list the files of src/checks/rules; run: node scripts/generateChecks.mjs',
    );
    process.exitCode = 1;
  }
} else if (currentText() !== text) {
  writeFileSync(registry, text);
}

function registryText(rules) {
  const list = `export const checks: readonly Check[] = [${rules.join(', ')}];`;
  return [
    '// Made by scripts/generateChecks.mjs from the files in rules/.',
    "import type { Check } from './defineCheck.ts';",
    ...rules.map((name) => `import { ${name} } from './rules/${name}.ts';`),
    '',
    '/** All checks, in order of their file names. */',
    ...(list.length <= 120
      ? [list]
      : ['export const checks: readonly Check[] = [', ...rules.map((name) => `  ${name},`), '];']),
    '',
  ].join('\n');
}

function currentText() {
  try {
    return readFileSync(registry, 'utf8');
  } catch {
    return '';
  }
}
