import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { buildPages, generateClient, install } from '../lib/platform/launch/prepare.mjs';

// npm test: every gate, cheapest first, in a bare clone too. Its last line is the count of all.

const root = resolve(import.meta.dirname, '..');
const scratch = mkdtempSync(join(tmpdir(), 'kiln-results-'));
/** Whoever runs the database has to pass through, which it may not in the folder of the results. */
const demo = mkdtempSync(join(tmpdir(), 'kiln-demo-'));
const never = new AbortController().signal;
const modules = join(root, 'node_modules');
const node = process.execPath;
const count = { passed: 0, failed: 0, tests: 0 };
const filesRun = new Set();

/** One gate: its time, and one mark for it. @returns true when it passed */
async function gate(name, work) {
  const startedAt = performance.now();
  let fault = null;
  try {
    await work();
    count.passed += 1;
  } catch (error) {
    count.failed += 1;
    fault = error instanceof Error ? error.message : String(error);
  }
  say(`${fault === null ? 'passed' : 'FAILED'}  ${name}: ${secondsSince(startedAt)} s`);
  if (fault) say(fault);
  return fault === null;
}

/** One project of vitest: its time, and a mark for each test. */
async function suite(name, project, { environment = {}, words = [] } = {}) {
  const startedAt = performance.now();
  const file = join(scratch, `${name.replaceAll(/\W+/g, '-')}.json`);
  const all = ['run', '--project', project, '--reporter=json', `--outputFile=${file}`, ...words];
  const ended = await tool(['vitest/vitest.mjs', ...all], environment);
  const { passed, faults } = readResults(file);
  // A suite that ran nothing, or fell over beside its tests, has failed.
  if (passed + faults.length === 0 || (ended.code !== 0 && faults.length === 0)) {
    faults.push(ended.said.trim().split('\n').slice(-40).join('\n'));
  }
  count.passed += passed;
  count.failed += faults.length;
  count.tests += passed;
  const result = `${passed} passed, ${faults.length} failed, ${secondsSince(startedAt)} s`;
  say(`${faults.length === 0 ? 'passed' : 'FAILED'}  ${name}: ${result}`);
  for (const fault of faults) say(fault);
}

function readResults(file) {
  if (!existsSync(file)) return { passed: 0, faults: [] };
  const results = JSON.parse(readFileSync(file, 'utf8'));
  const faults = results.testResults.flatMap(faultsOf);
  for (const one of results.testResults) filesRun.add(resolve(one.name));
  return { passed: results.numPassedTests, faults };
}

/** A file that cannot be read counts as one failed test; a skipped test is not a passed one. */
function faultsOf({ name, status, message, assertionResults }) {
  const faults = assertionResults
    .filter((one) => one.status !== 'passed')
    .map((one) => `${name}: ${one.fullName}\n${firstLines(one.failureMessages.join('\n'))}`);
  if (status === 'failed' && faults.length === 0) faults.push(`${name}\n${firstLines(message)}`);
  return faults;
}

function firstLines(text) {
  return `    ${text.split('\n').slice(0, 12).join('\n    ')}`;
}

function tool([script, ...words], environment) {
  return program(node, [join(modules, script), ...words], environment);
}

function program(file, words, environment = {}) {
  const child = spawn(file, words, {
    cwd: root,
    env: { ...process.env, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk) => {
      said += chunk;
    });
  }
  return new Promise((done) => child.once('close', (code) => done({ code, said })));
}

async function mustPass(words, environment) {
  const { code, said } = await tool(words, environment);
  if (code !== 0) throw new Error(said.trim() || `it ended with ${code}`);
}

/** A test file that belongs to no project would pass for ever without being run. */
async function noneLeftOut() {
  const all = readdirSync(import.meta.dirname, { recursive: true })
    .filter((name) => /\.(test|spec)\.ts$/.test(name))
    .map((name) => join(import.meta.dirname, name));
  const left = all.filter((file) => !filesRun.has(file));
  if (left.length > 0) throw new Error(`Not run: ${left.join(', ')}`);
}

/** Hangs the demo gallery once for every suite that opens the product. */
async function hangDemo() {
  chmodSync(demo, 0o711);
  const script = join(root, 'tests/helpers/hang-demo.ts');
  const way = ['--conditions=react-server', '--import', 'tsx', script, demo];
  const { code, said } = await program(node, way);
  if (code !== 0) throw new Error(said.trim() || `it ended with ${code}`);
}

/** Finds a browser; as root on Debian, installs one. */
async function readyChromium() {
  const known = [process.env.CHROMIUM_PATH, '/usr/bin/chromium'];
  const found = () => known.find((path) => path && existsSync(path));
  if (!found() && process.getuid?.() === 0 && existsSync('/etc/debian_version')) {
    const apt = (...words) =>
      spawnSync('apt-get', words, {
        encoding: 'utf8',
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      });
    apt('update');
    const done = apt('install', '-y', 'chromium');
    if (done.status !== 0) throw new Error(`apt-get install -y chromium: ${done.stderr}`);
  }
  const path = found();
  if (path) return path;
  throw new Error(
    'The browser tests need Chromium: install the package chromium (apt-get install -y chromium), ' +
      'or name one with CHROMIUM_PATH.',
  );
}

function secondsSince(startedAt) {
  return Math.round((performance.now() - startedAt) / 100) / 10;
}

/** What does not know the time, and takes longest. */
const timeless = [
  ...['rules/house/**', 'rules/look/**', 'rules/files/**', 'rules/workings/command.test.ts'],
  ...['published/labels.test.ts', 'published/money*.test.ts', 'properties/money.test.ts'],
];

/** Test files keep nothing between them, so that they may share a process: half the time. */
const together = ['--no-isolate'];

/** The rules again in another time zone. */
function elsewhere(zone) {
  const left = timeless.flatMap((files) => ['--exclude', `tests/${files}`]);
  return { environment: { TZ: zone }, words: [...together, ...left] };
}

function say(sentence) {
  process.stdout.write(`${sentence}\n`);
}

async function main() {
  const isInstalled = await gate('install', () => install(never));
  const isMade =
    isInstalled &&
    (await gate('generate', async () => {
      await generateClient(never);
      await mustPass(['next/dist/bin/next', 'typegen']);
    }));
  if (!isMade) return;
  const quiet = ['--check', '--log-level', 'warn', '.'];
  const reading = async () => {
    await gate('format', () => mustPass(['prettier/bin/prettier.cjs', ...quiet]));
    await gate('types', () => mustPass(['typescript/bin/tsc', '--noEmit']));
    await gate('structure', () => mustPass(['../tests/structure.mjs']));
    await gate('demo gallery', hangDemo);
  };
  // Each of these keeps one core busy; together they take as long as the linter alone.
  const lint = ['eslint/bin/eslint.js', '.', '--max-warnings', '0'];
  await Promise.all([gate('lint', () => mustPass(lint)), reading()]);
  await suite('rules', 'pure', { words: together });
  await suite('rules in St. John’s', 'pure', elsewhere('America/St_Johns'));
  await suite('rules in the Chathams', 'pure', elsewhere('Pacific/Chatham'));
  await suite('database', 'database', { words: together });
  const isBuilt = await gate('build', () => buildPages(never));
  let chromium = '';
  const hasBrowser = await gate('browser is there', async () => {
    chromium = await readyChromium();
  });
  const withChromium = { environment: { CHROMIUM_PATH: chromium, DEMO_GALLERY: demo } };
  if (!isBuilt) say('Without a build neither the browser nor the outside tests can run.');
  if (isBuilt && hasBrowser) await suite('browser', 'browser', withChromium);
  if (isBuilt) await suite('outside', 'outside', withChromium);
  await gate('no test file left out', noneLeftOut);
}

try {
  await main();
} finally {
  for (const folder of [scratch, demo]) rmSync(folder, { recursive: true, force: true });
}
if (count.tests === 0) count.failed = Math.max(count.failed, 1);
say(`${count.passed} passed, ${count.failed} failed`);
process.exit(count.failed === 0 ? 0 : 1);
