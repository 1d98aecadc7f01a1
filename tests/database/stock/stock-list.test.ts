import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { constraintOf } from '@/lib/platform/db/errors';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { bringIntoStock } from '@/lib/stock/writes';
import { confirmStockList, lookAgain, showStockList } from '@/lib/stock/writes/stock-list';
import type { Doer } from '@/lib/access/rules';
import { sql, startAfresh } from '@/tests/helpers/database';
import { aGallery, type TestGallery } from './a-gallery';

const heading = 'code,title,kind,width,height,colourway,price,here,barcode\r\n';
const twoPieces =
  heading +
  'TERN-10-CI,Tern over Shoals,relief tile,10,10,Celadon,138.00,4,2000000000015\r\n' +
  'FERN-5-CO,Sword Fern,relief tile,5 in,127 mm,Copper moss,"$42.00",30,\r\n';

let here: TestGallery;
beforeEach(async () => {
  await startAfresh();
  here = await aGallery();
});

async function shown(file: string, doer: Doer = here.gallery) {
  const bytes = Buffer.from(file, 'utf8');
  const list = await showStockList(doer, {
    requestKey: randomUUID(),
    fileName: 'stock.csv',
    bytes,
  });
  if (!list.ok) throw new Error(list.refusal.code);
  return listed(list.value.stockListId);
}

async function listed(id: string) {
  const [row] = await sql<{ id: string; planSha256: string; confirmedAt: Date | null }>(
    'select * from "StockList" where id = $1',
    [id],
  );
  if (!row) throw new Error('no such list');
  return row;
}

const yesTo = (list: { id: string; planSha256: string }, requestKey: string = randomUUID()) => ({
  requestKey,
  stockListId: list.id,
  planSha256: list.planSha256,
  leaveRefusedOut: false,
});

async function bringIn(file: string) {
  const confirmed = await confirmStockList(here.gallery, yesTo(await shown(file)));
  if (!confirmed.ok) throw new Error(confirmed.refusal.code);
  return confirmed.value;
}

const written = ['Design', 'Colourway', 'Sku', 'StockMovement', 'StockLevel'] as const;
async function countAll(tables: readonly string[] = written) {
  const counts = tables.map((table) => `(select count(*)::int from "${table}") as "${table}"`);
  const [row] = await sql<Record<string, number>>(`select ${counts.join(', ')}`);
  return row;
}
const nothing = Object.fromEntries(written.map((table) => [table, 0]));

const onHand = async (code: string) =>
  (
    await sql<{ onHand: number }>(
      'select "onHand" from "StockLevel" join "Sku" on id = "skuId" where code = $1',
      [code],
    )
  )[0]?.onHand;

test('looking at a list keeps the file and writes nothing to the catalogue or to stock', async () => {
  const list = await shown(twoPieces);
  expect(list).toMatchObject({ newRows: 2, changedRows: 0, sameRows: 0, refusedRows: 0 });
  expect(await countAll()).toEqual(nothing);
  const [file] = await sql<{ bytes: Buffer }>('select bytes from "StoredFile"');
  expect(file?.bytes.toString('utf8')).toBe(twoPieces);
});

test('a confirmed list is in the catalogue and in stock, as the file says', async () => {
  expect(await bringIn(twoPieces)).toMatchObject({ newRows: 2 });
  const skus = await sql(
    `select s.code, d.title, d.code as design, c.name, s."widthUm", s."heightUm", s."priceCents"
     from "Sku" s join "Design" d on d.id = s."designId" join "Colourway" c on c.id = s."colourwayId"
     order by s.code`,
  );
  expect(skus).toEqual([
    {
      ...{ code: 'FERN-5-CO', title: 'Sword Fern', design: 'FERN', name: 'Copper moss' },
      ...{ widthUm: 127_000, heightUm: 127_000, priceCents: '4200' },
    },
    {
      ...{ code: 'TERN-10-CI', title: 'Tern over Shoals', design: 'TERN', name: 'Celadon' },
      ...{ widthUm: 254_000, heightUm: 254_000, priceCents: '13800' },
    },
  ]);
  expect([await onHand('TERN-10-CI'), await onHand('FERN-5-CO')]).toEqual([4, 30]);
  const [audit] = await sql('select did, facts from "AuditLine" order by id desc limit 1');
  expect(audit).toMatchObject({ did: 'brought in a stock list', facts: { newRows: 2 } });
});

test('a new count becomes one movement of the difference, and no history is changed', async () => {
  await bringIn(twoPieces);
  await bringIn('code,here,price\nTERN-10-CI,1,138\nFERN-5-CO,36,44.00');
  expect([await onHand('TERN-10-CI'), await onHand('FERN-5-CO')]).toEqual([1, 36]);
  const movements = await sql(
    'select code, quantity, reason from "StockMovement" m join "Sku" s on s.id = "skuId" order by m.id',
  );
  expect(movements).toEqual([
    { code: 'TERN-10-CI', quantity: 4, reason: 'opening' },
    { code: 'FERN-5-CO', quantity: 30, reason: 'opening' },
    { code: 'TERN-10-CI', quantity: -3, reason: 'counted' },
    { code: 'FERN-5-CO', quantity: 6, reason: 'counted' },
  ]);
});

test('a row that the database refuses leaves nothing of the whole list', async () => {
  await sql('alter table "Sku" add constraint no_such_piece check (code <> \'LAST-1\')');
  const rows = Array.from(
    { length: 40 },
    (_, at) => `A-${at},Design ${at},bowl,8,3,Moon,${at}.00,2,`,
  );
  const list = await shown(`${heading}${rows.join('\n')}\nLAST-1,Last,bowl,8,3,Moon,5,1,`);
  const confirming = confirmStockList(here.gallery, yesTo(list));
  const error: unknown = await confirming.catch((failure: unknown) => failure);
  expect(constraintOf(error)).toBe('no_such_piece');
  expect(await countAll()).toEqual(nothing);
  expect((await listed(list.id)).confirmedAt).toBeNull();
});

test('the same yes sent twice happens once', async () => {
  const yes = yesTo(await shown(twoPieces));
  const both = await Promise.all([
    confirmStockList(here.gallery, yes),
    confirmStockList(here.gallery, yes),
  ]);
  expect(both.map((each) => each.ok)).toEqual([true, true]);
  expect(await countAll(['StockMovement'])).toEqual({ StockMovement: 2 });
});

test('two yeses from two windows: one brings it in, the other is told', async () => {
  const list = await shown(twoPieces);
  const both = await Promise.all([
    confirmStockList(here.gallery, yesTo(list)),
    confirmStockList(here.owner, yesTo(list)),
  ]);
  expect(both.filter((each) => each.ok)).toHaveLength(1);
  expect(both.find((each) => !each.ok)).toMatchObject({ refusal: { code: 'confirmed_before' } });
  expect(await countAll(['StockMovement'])).toEqual({ StockMovement: 2 });
});

test('when the stock changed since, nothing is brought in; looked at once more, it is', async () => {
  await bringIn(twoPieces);
  const list = await shown('code,here\nTERN-10-CI,9');
  const [sku] = await sql<{ id: string }>('select id from "Sku" where code = \'TERN-10-CI\'');
  await inTransaction(async (tx) => {
    const one = { skuId: sku?.id ?? '', placeId: here.floorId, quantity: -1, unitCostCents: null };
    await bringIntoStock(tx, here.gallery, [{ ...one, reason: 'broken' }]);
    return ok(true);
  });
  const refused = await confirmStockList(here.gallery, yesTo(list));
  expect(refused).toEqual({ ok: false, refusal: { code: 'stock_changed' } });
  expect(await onHand('TERN-10-CI')).toBe(3);

  await lookAgain(here.gallery, { requestKey: randomUUID(), stockListId: list.id });
  const confirmed = await confirmStockList(here.gallery, yesTo(await listed(list.id)));
  expect(confirmed).toMatchObject({ ok: true });
  expect(await onHand('TERN-10-CI')).toBe(9);
});

test('refused lines stop the list until the person leaves them out', async () => {
  const list = await shown(`${twoPieces}BAD 1,Bad,bowl,8,3,Moon,5,1,\r\n`);
  const stopped = await confirmStockList(here.gallery, yesTo(list));
  expect(stopped).toEqual({ ok: false, refusal: { code: 'lines_refused', lines: 1 } });
  expect(await countAll()).toEqual(nothing);
  const yes = { ...yesTo(list), leaveRefusedOut: true };
  expect(await confirmStockList(here.gallery, yes)).toMatchObject({ ok: true });
  expect(await countAll(['Sku'])).toEqual({ Sku: 2 });
});

test('a list that changes nothing is not brought in', async () => {
  await bringIn(twoPieces);
  const again = await confirmStockList(here.gallery, yesTo(await shown(`${twoPieces}\r\n`)));
  expect(again).toEqual({ ok: false, refusal: { code: 'nothing_to_do' } });
});

test.each(['maker', 'books'] as const)('the %s may not bring in a list', async (role) => {
  const bytes = Buffer.from(twoPieces);
  const input = { requestKey: randomUUID(), fileName: 'stock.csv', bytes };
  const refusal = { code: 'not_allowed', permission: 'stock.load' };
  expect(await showStockList(here[role], input)).toEqual({ ok: false, refusal });
  const yes = yesTo(await shown(twoPieces));
  expect(await confirmStockList(here[role], yes)).toEqual({ ok: false, refusal });
  expect(await countAll()).toEqual(nothing);
});

test('2,000 lines go in whole, in a few seconds', async () => {
  const rows = Array.from(
    { length: 2_000 },
    (_, at) => `T-${at},Design ${at % 200},bowl,8,3,Glaze ${at % 9},${at}.25,${at % 7},`,
  );
  await bringIn(heading + rows.join('\n'));
  expect(await countAll(['Sku', 'Design', 'Colourway'])).toEqual({
    ...{ Sku: 2_000, Design: 200, Colourway: 9 },
  });
  const [sum] = await sql('select sum("onHand")::int as pieces from "StockLevel"');
  const pieces = rows.reduce((total, _row, at) => total + (at % 7), 0);
  expect(sum).toEqual({ pieces });
}, 20_000);
