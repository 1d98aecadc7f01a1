import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { counterScript } from './counter-script.mjs';

// npm run bench: a stock list of 50,000 lines looked at and brought in, against a plain COPY of
// the same file, with the most memory the process ever held; 10,000 futures of 100 open jobs, and
// how many simulated truths they hold; and the JavaScript of the counter.
// Ends with 1 when the memory goes above its limit.

const root = resolve(import.meta.dirname, '../..');

const words = ['--conditions=react-server', '--import', 'tsx', 'tests/bench/stock-list.ts'];
const ran = spawnSync(process.execPath, [...words, ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
});

const futures = ['--conditions=react-server', '--import', 'tsx', 'tests/bench/forecast.ts'];
const foretold = spawnSync(process.execPath, futures, { cwd: root, stdio: 'inherit' });

const built = join(root, '.next');
if (existsSync(join(built, 'BUILD_ID'))) {
  const { counterBytes, emptyBytes } = counterScript(built);
  const kb = (bytes) => `${Math.round(bytes / 1_000)} kB`;
  const over = kb(counterBytes - emptyBytes);
  console.log(
    `JavaScript of the counter, gzipped: ${kb(counterBytes)}; of an empty page: ` +
      `${kb(emptyBytes)}; our own part: ${over}.`,
  );
} else {
  console.log('JavaScript of the counter: not measured, because nothing is built here.');
}
process.exitCode = (ran.status ?? 1) || (foretold.status ?? 1);
