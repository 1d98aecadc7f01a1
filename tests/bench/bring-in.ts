import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Doer } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { readKnownStock } from '@/lib/stock/reads/known-stock';
import { readListFile } from '@/lib/stock/reads/list-file';
import { hashPlan } from '@/lib/stock/reads/plan-hash';
import { planStockList } from '@/lib/stock/rules/list-plan';
import { countPlan, planAsShown } from '@/lib/stock/rules/list-summary';
import { confirmStockList, showStockList } from '@/lib/stock/writes/stock-list';

// Looks at a stock list and brings it in, and says how long it took and how much memory it held.

const [file = '', count = ''] = process.argv.slice(2);
const lines = Number(count);
const bytes = readFileSync(file);
const doer = await openGallery();
let stockListId = '';
let planSha256 = '';

const looked = await secondsOf(async () => {
  const shown = await showStockList(doer, {
    ...{ requestKey: randomUUID(), fileName: 'stock.csv', bytes },
  });
  if (!shown.ok) throw new Error(shown.refusal.code);
  stockListId = shown.value.stockListId;
});

// What the page of lines does, without the page.
const seen = await secondsOf(async () => {
  const list = await readListFile(bytes, 'in');
  if (!list.ok) throw new Error(list.refusal.code);
  const { placeId } = await db().stockList.findUniqueOrThrow({ where: { id: stockListId } });
  const known = await readKnownStock(db(), list.value.rows, placeId);
  const plan = planStockList(list.value.rows, known);
  const shown = planAsShown(plan);
  if (countPlan(shown).newRows !== lines) throw new Error('Not every line is a new piece.');
  planSha256 = hashPlan(plan);
});

const confirmed = await secondsOf(async () => {
  const yes = { requestKey: randomUUID(), stockListId, planSha256, leaveRefusedOut: false };
  const done = await confirmStockList(doer, yes);
  if (!done.ok) throw new Error(done.refusal.code);
});
if ((await db().sku.count()) !== lines) throw new Error('Not every line was brought in.');

const peakMb = Math.round(process.resourceUsage().maxRSS / 1_024);
process.stdout.write(JSON.stringify({ looked, seen, confirmed, peakMb }));
await db().$disconnect();

async function openGallery(): Promise<Doer> {
  const at = new Date('2026-11-25T18:00:00Z');
  const taxPlace = await db().taxPlace.create({ data: { name: 'Inlet', state: 'Alderland' } });
  const floor = await db().place.create({ data: { name: 'Gallery floor' } });
  const facts = { name: 'Bench', timeZone: 'America/Los_Angeles' };
  const places = { taxPlaceId: taxPlace.id, counterId: floor.id };
  await db().gallery.create({ data: { ...facts, ...places } });
  const passwordHash = '$argon2id$v=19$m=19456,t=2,p=1$none';
  const person = { name: 'The owner', signInName: 'owner', passwordHash, createdAt: at };
  const staff = await db().staff.create({ data: { ...person, roles: ['owner'] } });
  return { actor: { id: staff.id, name: staff.name, roles: ['owner'] }, at };
}

async function secondsOf(work: () => Promise<unknown>): Promise<number> {
  const startedAt = performance.now();
  await work();
  return (performance.now() - startedAt) / 1_000;
}
