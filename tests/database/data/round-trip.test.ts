import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { peopleFile, salesFile, stockFile } from '@/lib/data/reads/take-out';
import { db } from '@/lib/platform/db/client';
import { confirmStockList, showStockList } from '@/lib/stock/writes/stock-list';
import { sql, startAfresh } from '../../helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  later,
  openGallery,
  sellNow,
  type OpenGallery,
} from '../sales/open-gallery';
import { broughtIn, bytesOf } from './a-load';

let gallery: OpenGallery;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const hard = [
  { name: 'Ødegård & Søn', email: 'mail@example.org', note: 'two\nlines, and a "quote"' },
  { name: 'שלום עולם', note: '=1+1' },
  { name: '🌊 Otter', phone: '+1 555 0100', note: "'=1+1" },
  { name: '@home', street: '-1 Skiff Lane', note: "'t Anker" },
  { name: 'Wren Alder', email: 'wren@example.org' },
  { name: 'Wren Alder', email: 'wren@example.org', kind: 'designer' as const },
];

async function addPeople(): Promise<void> {
  for (const person of hard) {
    await db().collector.create({ data: { ...person, createdAt: new Date('2026-01-01') } });
  }
}

async function bringStock(text: string): Promise<void> {
  const doer = doing(gallery.owner);
  const bytes = bytesOf(text);
  const input = { requestKey: randomUUID(), fileName: 'stock.csv', bytes };
  const shown = await showStockList(doer, input);
  if (!shown.ok) throw new Error(shown.refusal.code);
  const where = { id: shown.value.stockListId };
  const { planSha256 } = await db().stockList.findUniqueOrThrow({ where });
  const yes = { requestKey: randomUUID(), ...shown.value, planSha256, leaveRefusedOut: false };
  const confirmed = await confirmStockList(doer, yes);
  if (!confirmed.ok) throw new Error(confirmed.refusal.code);
}

test('people come back byte for byte in an empty gallery', async () => {
  await addPeople();
  const file = await peopleFile(gallery.owner);
  await startAfresh();
  gallery = await openGallery();
  expect(await broughtIn(doing(gallery.owner), 'people', file)).toMatchObject({
    ok: true,
    value: { newLines: hard.length },
  });
  expect(await peopleFile(gallery.books)).toBe(file);
});

test('stock, people and sales come back byte for byte in an empty gallery', async () => {
  await addPeople();
  const tern = { sku: 'TERN-5', title: '=Tern, over “Shoals”', priceCents: 4_999n, here: 9 };
  const fern = { sku: 'FERN-5', title: 'Sword Fern', priceCents: 12_000n, here: 2 };
  const [one, two] = [await aPieceHere(gallery, tern), await aPieceHere(gallery, fern)];
  const buyer = await db().collector.findFirstOrThrow({ where: { name: '🌊 Otter' } });
  const clerk = gallery.clerk;
  const cash = aSale([{ piece: one, quantity: 2 }], { collectorId: buyer.id });
  expect(await sellNow(doing(clerk, later(1)), cash)).toMatchObject({ ok: true });
  const both = aSale([
    { piece: one, quantity: 1 },
    { piece: two, quantity: 1 },
  ]);
  const byCard = [
    { kind: 'card' as const, amountCents: both.expectedTotalCents, reference: '=12' },
  ];
  const carded = { ...both, tenders: byCard };
  expect(await sellNow(doing(clerk, later(61)), carded)).toMatchObject({ ok: true });
  const files = await takenOut();

  await startAfresh();
  gallery = await openGallery();
  await bringStock(files.stock);
  const doer = doing(gallery.owner, later(600));
  expect(await broughtIn(doer, 'people', files.people)).toMatchObject({ ok: true });
  expect(await broughtIn(doer, 'sales', files.sales)).toMatchObject({ ok: true });
  expect(await takenOut()).toEqual(files);
  expect(await broughtIn(doer, 'sales', files.sales)).toMatchObject({
    refusal: { code: 'nothing_to_do' },
  });
});

async function takenOut() {
  return {
    stock: await stockFile(gallery.owner),
    people: await peopleFile(gallery.owner),
    sales: await salesFile(gallery.owner),
  };
}

test('sales of an earlier system are sales of their day, and what is on hand stays', async () => {
  await aPieceHere(gallery, { sku: 'TERN-5', title: 'Tern', priceCents: 5_000n, here: 3 });
  const file = [
    'date,sku,title,quantity,net,tax,tender',
    '2024-05-31,TERN-5,,2,90.00,7.20,card',
    '2024-06-01,,Hooks,1,4.00,0.32,cash',
  ].join('\n');
  expect(await broughtIn(doing(gallery.owner), 'sales', file)).toMatchObject({
    ok: true,
    value: { newLines: 2 },
  });
  const levels = await sql('select "onHand" from "StockLevel"');
  expect(levels).toEqual([{ onHand: 3 }]);
  const moved = await sql(
    `select quantity, reason::text, at from "StockMovement"
     where reason in ('opening', 'sold') order by id`,
  );
  const at = new Date('2024-05-31T19:00:00Z');
  expect(moved).toEqual([
    { quantity: 2, reason: 'opening', at },
    { quantity: -2, reason: 'sold', at },
  ]);
  const posted = await sql(
    `select entry."on"::text as day, sum(posting."amountCents")::int as rest
     from "JournalEntry" entry join "Posting" posting on posting."entryId" = entry.id
     group by 1 order by 1`,
  );
  expect(posted).toEqual([
    { day: '2024-05-31', rest: 0 },
    { day: '2024-06-01', rest: 0 },
  ]);
});

test('two thousand sales come in, and go out as they came', async () => {
  const rows = Array.from({ length: 2_000 }, (_, at) => {
    const minute = String(at % 60).padStart(2, '0');
    const hour = String(10 + (Math.floor(at / 60) % 12)).padStart(2, '0');
    const day = String(1 + (Math.floor(at / 720) % 28)).padStart(2, '0');
    return `${at + 1},2024-05-${day}T${hour}:${minute}:00Z,Hooks,4.00,0.32,cash`;
  });
  const file = ['sale,sold at,title,net,tax,tender', ...rows].join('\n');
  expect(await broughtIn(doing(gallery.owner), 'sales', file)).toMatchObject({
    ok: true,
    value: { newLines: 2_000 },
  });
  const out = await salesFile(gallery.owner);
  expect(out.split('\r\n')).toHaveLength(2_002);
}, 120_000);

test('who may not take files out may not', async () => {
  await expect(peopleFile(gallery.clerk)).rejects.toThrow();
  await expect(stockFile(gallery.maker)).rejects.toThrow();
  await expect(salesFile(gallery.clerk)).rejects.toThrow();
});
