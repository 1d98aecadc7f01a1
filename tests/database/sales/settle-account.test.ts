import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { settleAccountInput } from '@/lib/sales/input/settling';
import { settleAccount } from '@/lib/sales/writes/settle-account';
import { keepShopOrder } from '@/lib/wholesale/writes';
import { shipShopOrder } from '@/lib/wholesale/writes/ship';
import { db } from '@/lib/platform/db/client';
import { sql, startAfresh } from '@/tests/helpers/database';
import { anOrder, aShipping, aShop } from '../wholesale/a-shop';
import { aPieceHere, doing, openGallery, type OpenGallery } from './open-gallery';

let gallery: OpenGallery;
let saleId: string;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  await aPieceHere(gallery, { sku: 'TS-10-CI', title: 'Tern', priceCents: 20_000n, here: 4 });
  const shop = await aShop(gallery);
  const kept = await keepShopOrder(doing(gallery.clerk), anOrder(shop, 'TS-10-CI 3'));
  if (!kept.ok) expect.unreachable('The order is taken.');
  await shipShopOrder(doing(gallery.clerk), aShipping(gallery, kept.value.orderId));
  saleId = (await db().sale.findFirstOrThrow()).id;
});

function money(amount: string, over: Record<string, unknown> = {}) {
  const fields = { requestKey: randomUUID(), saleId, amount, kind: 'cheque' };
  return settleAccountInput.parse({ ...fields, receivedOn: '2026-11-20', ...over });
}

test('money comes in parts, is in the books, and settles what is owed to the cent', async () => {
  const clerk = doing(gallery.clerk);
  expect(await settleAccount(clerk, money('100.01'))).toMatchObject({
    value: { number: 1, stillOwed: '19999' },
  });
  expect(await settleAccount(clerk, money('199.99', { kind: 'bank_transfer' }))).toMatchObject({
    value: { stillOwed: '0' },
  });
  const balances = await sql(
    `select "accountCode" as account, sum("amountCents")::int as cents from "Posting"
     group by 1 order by 1`,
  );
  expect(balances).toEqual([
    { account: '1020', cents: 10_001 },
    { account: '1030', cents: 19_999 },
    { account: '1100', cents: 0 },
    { account: '4000', cents: -30_000 },
  ]);
});

test('refuses each in its order, and writes nothing', async () => {
  const clerk = doing(gallery.clerk);
  const tries = [
    await settleAccount(doing(gallery.maker), money('1', { saleId: randomUUID() })),
    await settleAccount(clerk, money('1', { saleId: randomUUID() })),
    await settleAccount(clerk, money('300.01')),
    await settleAccount(clerk, money('1', { receivedOn: '2026-11-19' })),
    await settleAccount(clerk, money('1', { receivedOn: '2026-11-21' })),
    await settleAccount(clerk, money('1', { reference: '4111 1111 1111 1111' })),
  ].map((each) => (each.ok ? 'ok' : each.refusal.code));
  expect(tries).toEqual([
    ...['not_allowed', 'unknown_sale', 'more_than_owed', 'before_the_sale', 'not_yet'],
    'card_number_typed',
  ]);
  expect(await db().settlementPayment.count()).toBe(0);
  await settleAccount(clerk, money('300'));
  expect(await settleAccount(clerk, money('0.01'))).toMatchObject({
    refusal: { code: 'nothing_owed' },
  });
});

test('two who take the last money at once take it once, and the same form twice is one', async () => {
  const same = money('100');
  const clerk = doing(gallery.clerk);
  const [once, again] = [await settleAccount(clerk, same), await settleAccount(clerk, same)];
  expect(again).toEqual(once);
  const both = await Promise.all([
    settleAccount(clerk, money('200')),
    settleAccount(doing(gallery.second), money('200')),
  ]);
  expect(both.filter((each) => each.ok)).toHaveLength(1);
  const sums = await sql('select sum("amountCents")::int as cents from "SettlementPayment"');
  expect(sums).toEqual([{ cents: 30_000 }]);
});

test('a key used for something else is refused', async () => {
  const first = money('10');
  await settleAccount(doing(gallery.clerk), first);
  expect(
    await settleAccount(doing(gallery.clerk), money('11', { requestKey: first.requestKey })),
  ).toMatchObject({ refusal: { code: 'key_used_for_something_else' } });
});

test('the database itself takes no more than is owed, and no promise for money', async () => {
  const entry = await db().journalEntry.findFirstOrThrow();
  const insert = (cents: number, kind: string) =>
    sql(
      `insert into "SettlementPayment"
        (id, "saleId", "amountCents", kind, "receivedOn", "staffId", at, "entryId")
       values (gen_random_uuid(), $1, $2, $3::"TenderKind", '2026-11-20', $4, now(), $5)`,
      [saleId, cents, kind, gallery.owner.id, entry.id],
    );
  await expect(insert(30_001, 'cheque')).rejects.toThrow('settled_at_most_what_is_owed');
  await expect(insert(100, 'on_account')).rejects.toThrow('settlement_is_money');
});
