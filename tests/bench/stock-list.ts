import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import pg from 'pg';
import { z } from 'zod';
import { migrate } from '@/lib/platform/db/migrate';
import { startServer } from '@/lib/platform/db/server';

// A fresh database, a stock list of 50,000 lines, and a process of its own that brings it in.

const lines = Number(process.argv[2] ?? 50_000);
const memoryMostMb = 512;
const columns =
  'code,title,kind,width,height,depth,unit,colourway,price,cost,weight,here,barcode,making';
const kinds = ['relief tile', 'plaque', 'bowl', 'platter', 'planter'];

const folder = mkdtempSync(join(tmpdir(), 'kiln-bench-'));
const file = join(folder, 'stock.csv');
const server = await startServer(join(folder, 'data'), 'safe');
try {
  await migrate(server.url());
  writeFileSync(file, stockList(lines));
  const copySeconds = await copyPlainly();
  const { looked, seen, confirmed, peakMb } = bringInElsewhere();
  report('A plain COPY of the file', copySeconds, copySeconds);
  report('Looking at the list', looked, copySeconds);
  report('Its page of lines', seen, copySeconds);
  report('Bringing it in', confirmed, copySeconds);
  console.log(`The most memory the process held: ${peakMb} MB of ${memoryMostMb} MB.`);
  if (peakMb > memoryMostMb) process.exitCode = 1;
} finally {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
}
process.exit();

/** Believable rows, the same at each run: 2,000 designs in a dozen colourways. */
function stockList(count: number): string {
  const rows = Array.from({ length: count }, (_, at) => {
    const price = `"$1,${String(100 + (at % 900))}.${String(at % 100).padStart(2, '0')}"`;
    const code = `B-${String(at).padStart(6, '0')}`;
    const kind = kinds[at % kinds.length] ?? '';
    const facts = [code, `Design ${at % 2_000}`, kind, '10 1/2', '254 mm', '3/4', 'in'];
    const rest = [`Glaze ${at % 12}`, price, '43.50', '2450 g', String(at % 9), '', 'open stock'];
    return [...facts, ...rest].join(',');
  });
  return `${columns}\r\n${rows.join('\r\n')}\r\n`;
}

/** The yardstick: what PostgreSQL itself needs for the same lines as plain text. */
async function copyPlainly(): Promise<number> {
  chmodSync(folder, 0o755);
  chmodSync(file, 0o644);
  const url = new URL(server.url());
  url.username = 'postgres';
  url.password = server.keys.databaseOwnerPassword;
  const session = new pg.Client({ connectionString: url.href });
  await session.connect();
  const texts = columns.split(',').map((column) => `"${column}" text`);
  await session.query(`create table plain (${texts.join(', ')})`);
  const startedAt = performance.now();
  await session.query(`copy plain from '${file}' with (format csv, header)`);
  const seconds = (performance.now() - startedAt) / 1_000;
  await session.query('drop table plain');
  await session.end();
  return seconds;
}

/**
 * In a process of its own, so that its memory is that of the work and of nothing else. Its heap
 * is kept to 256 MB: left alone, JavaScript clears away only when it must.
 */
function bringInElsewhere() {
  const heap = '--max-old-space-size=256';
  const words = [heap, '--conditions=react-server', '--import', 'tsx', 'tests/bench/bring-in.ts'];
  const ran = spawnSync(process.execPath, [...words, file, String(lines)], {
    cwd: resolve(import.meta.dirname, '../..'),
    env: { ...process.env, DATABASE_URL: server.url() },
    stdio: ['ignore', 'pipe', 'inherit'],
    encoding: 'utf8',
  });
  const told = { looked: z.number(), seen: z.number(), confirmed: z.number(), peakMb: z.number() };
  return z.object(told).parse(JSON.parse(ran.stdout));
}

function report(what: string, seconds: number, copySeconds: number): void {
  const rounded = Math.round(seconds * 100) / 100;
  const rate = Math.round(lines / seconds).toLocaleString('en-US');
  const ratio = Math.round((seconds / copySeconds) * 10) / 10;
  console.log(`${what}: ${rounded} s, ${rate} lines a second, ${ratio} times a plain COPY.`);
}
