import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

// Who may import whom. A checker that looks at nothing passes everything, so the number of
// modules it has looked at must be above the floor kept in package.json.

const root = resolve(import.meta.dirname, '..');
const parts = ['app', 'lib', 'seed', 'tests', 'proxy.ts'].filter((part) =>
  existsSync(join(root, part)),
);
const { structure } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const floor = structure?.modulesAtLeast;

// The list of floors beside the rules is ours; the cruiser wants its own two keys alone.
const { forbidden, options } = createRequire(import.meta.url)('../.dependency-cruiser.cjs');
// The generated client goes round in circles by design: it is a leaf here.
options.doNotFollow = { path: ['node_modules', '^generated/'] };
const scratch = mkdtempSync(join(tmpdir(), 'kiln-structure-'));
const rules = join(scratch, 'rules.json');
writeFileSync(rules, JSON.stringify({ forbidden, options }));

const asked = spawnSync(
  process.execPath,
  [
    join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs'),
    ...['--config', rules, '--output-type', 'json', ...parts],
  ],
  { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 },
);

rmSync(scratch, { recursive: true });

const faults = [];
try {
  const { summary } = JSON.parse(asked.stdout);
  for (const { from, to, rule } of summary.violations) {
    faults.push(`${rule.name}: ${from} must not import ${to}`);
  }
  if (!Number.isInteger(floor) || floor < 1) {
    faults.push('package.json must keep a floor: "structure": { "modulesAtLeast": … }');
  } else if (summary.totalCruised < floor) {
    faults.push(`only ${summary.totalCruised} modules were looked at; at least ${floor} exist`);
  }
  process.stdout.write(`${summary.totalCruised} modules, ${faults.length} faults\n`);
} catch {
  faults.push(`the check itself did not run: ${asked.stderr.trim() || asked.error}`);
}
for (const fault of faults) process.stderr.write(`${fault}\n`);
process.exit(faults.length === 0 ? 0 : 1);
