import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { findLayaway, listLayaways } from '@/lib/layaway/reads';
import { beginLayaway } from '@/lib/layaway/writes';
import { cancelLayaway, handOverLayaway } from '@/lib/layaway/writes/end';
import { constraintOf } from '@/lib/platform/db/errors';
import { sql, startAfresh } from '@/tests/helpers/database';
import { doing, openGallery, type OpenGallery } from '../sales/open-gallery';
import { aLayaway, aPanelAndSomebody, asked, pay, spend } from './a-layaway';

const today = '2026-11-20';
let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

async function heldFor(layawayId: string): Promise<bigint> {
  const [row] = await sql<{ cents: string }>('select layaway_money($1) as cents', [layawayId]);
  return BigInt(row?.cents ?? '0');
}

async function levelOf(skuId: string) {
  const [level] = await sql('select "onHand", held from "StockLevel" where "skuId" = $1', [skuId]);
  return level;
}

const ending = (layawayId: string) => ({ requestKey: randomUUID(), layawayId });
const handing = (layawayId: string) => ({ ...ending(layawayId), shownTotal: 51_840n });

test('a layaway keeps its pieces back and says when how much is to be paid', async () => {
  const { number, panel } = await aLayaway(gallery);
  const layaway = await findLayaway(gallery.clerk, number, today);
  expect(layaway).toMatchObject({ agreedTotalCents: 51_840n, standing: 'running', payments: [] });
  expect(layaway?.dues).toEqual([
    { dueOn: '2026-11-20', amountCents: 12_960n },
    { dueOn: '2026-12-20', amountCents: 12_960n },
    { dueOn: '2027-01-19', amountCents: 12_960n },
    { dueOn: '2027-02-18', amountCents: 12_960n },
  ]);
  expect(await levelOf(panel.skuId)).toEqual({ onHand: 1, held: 1 });
});

test('of two people who put the last one away at once, one is told who has it', async () => {
  const { panel, collectorId } = await aPanelAndSomebody(gallery);
  const both = await Promise.all([
    beginLayaway(doing(gallery.clerk), asked(panel.sku, collectorId)),
    beginLayaway(doing(gallery.second), asked(panel.sku, collectorId)),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  const no = both.find((each) => !each.ok);
  expect(no).toMatchObject({
    refusal: { code: 'not_held', hold: { code: 'not_enough_free', onHand: 1, held: 1 } },
  });
  expect(await levelOf(panel.skuId)).toEqual({ onHand: 1, held: 1 });
});

test.each([
  ['an unknown collector', { collectorId: randomUUID() }, 'unknown_collector'],
  ['nothing chosen', { pieces: '' }, 'nothing_chosen'],
  ['a piece nobody knows', { pieces: 'NO-SUCH' }, 'unknown_piece_chosen'],
  ['a discount without a reason', { discount: '10' }, 'discount_without_reason'],
  ['all of it taken off', { discount: '480', discountReason: 'gift' }, 'discount_above_price'],
  ['a discount beyond staff', { discount: '60', discountReason: 'x' }, 'discount_beyond_staff'],
  ['another price than shown', { shownNet: '470' }, 'price_changed'],
  ['a last day too soon', { finalOn: '2026-11-22' }, 'last_day_too_soon'],
  ['a last day too far', { finalOn: '2028-01-01' }, 'last_day_too_far'],
  ['everything paid down', { down: '518.40' }, 'down_leaves_nothing'],
])('%s is refused, and nothing is put away', async (_label, over, code) => {
  const { panel, collectorId } = await aPanelAndSomebody(gallery);
  const refused = await beginLayaway(doing(gallery.clerk), asked(panel.sku, collectorId, over));
  expect(refused).toMatchObject({ ok: false, refusal: { code } });
  expect(await levelOf(panel.skuId)).toEqual({ onHand: 1, held: 0 });
});

test('a maker may not put pieces away, and the same form sent twice is one layaway', async () => {
  const { panel, collectorId } = await aPanelAndSomebody(gallery);
  const form = asked(panel.sku, collectorId);
  const maker = await beginLayaway(doing(gallery.maker), form);
  expect(maker).toMatchObject({ refusal: { code: 'not_allowed' } });
  const first = await beginLayaway(doing(gallery.clerk), form);
  expect(await beginLayaway(doing(gallery.clerk), form)).toEqual(first);
});

test('paid off by two people at once, it is paid off once', async () => {
  const { layawayId, number } = await aLayaway(gallery);
  const both = await Promise.all([
    pay(gallery, doing(gallery.clerk), layawayId, 51_840n),
    pay(gallery, doing(gallery.second), layawayId, 51_840n),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  expect(both.find((each) => !each.ok)).toMatchObject({
    refusal: { code: 'more_than_remains', remainingCents: 0n },
  });
  expect(await heldFor(layawayId)).toBe(51_840n);
  expect((await findLayaway(gallery.clerk, number, today))?.standing).toBe('paid_off');
});

test('a cent more than remains is refused', async () => {
  const { layawayId } = await aLayaway(gallery);
  const paid = await pay(gallery, doing(gallery.clerk), layawayId, 51_841n);
  expect(paid).toMatchObject({ refusal: { code: 'more_than_remains', remainingCents: 51_840n } });
});

test('it is handed over once, when it is paid off and not before', async () => {
  const { layawayId, number, panel } = await aLayaway(gallery);
  await pay(gallery, doing(gallery.clerk), layawayId, 51_839n);
  const early = await handOverLayaway(doing(gallery.clerk), handing(layawayId));
  expect(early).toMatchObject({ refusal: { code: 'not_paid_off', remainingCents: 1n } });
  await pay(gallery, doing(gallery.clerk), layawayId, 1n);
  const other = { ...handing(layawayId), shownTotal: 51_000n };
  expect(await handOverLayaway(doing(gallery.clerk), other)).toMatchObject({
    refusal: { code: 'price_changed', nowCents: 51_840n },
  });

  const both = await Promise.all([
    handOverLayaway(doing(gallery.clerk), handing(layawayId)),
    handOverLayaway(doing(gallery.second), handing(layawayId)),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  expect(await levelOf(panel.skuId)).toEqual({ onHand: 0, held: 0 });
  expect(await heldFor(layawayId)).toBe(0n);
  const layaway = await findLayaway(gallery.clerk, number, today);
  expect(layaway).toMatchObject({ standing: 'handed_over', money: { remainingCents: 0n } });
  const late = await pay(gallery, doing(gallery.clerk), layawayId, 1n);
  expect(late).toMatchObject({ refusal: { code: 'layaway_has_ended', how: 'handed_over' } });
});

test('the books hold the money as a debt until the hand-over, and as a sale after it', async () => {
  const { layawayId } = await aLayaway(gallery);
  await pay(gallery, doing(gallery.clerk), layawayId, 51_840n);
  const debt = () =>
    sql<{ sum: string }>(
      `select coalesce(sum("amountCents"), 0)::text as sum from "Posting" where "layawayId" = $1`,
      [layawayId],
    );
  expect(await debt()).toEqual([{ sum: '-51840' }]);
  const done = await handOverLayaway(doing(gallery.clerk), handing(layawayId));
  if (!done.ok) throw new Error('It is paid off.');
  expect(await debt()).toEqual([{ sum: '0' }]);
  const sale = await sql(
    'select "netCents"::int as net, "taxCents"::int as tax from "Sale" where id = $1',
    [done.value.saleId],
  );
  expect(sale).toEqual([{ net: 48_000, tax: 3_840 }]);
});

test('when the tax has gone up since, the difference is asked before it is handed over', async () => {
  const { layawayId, number } = await aLayaway(gallery);
  await pay(gallery, doing(gallery.clerk), layawayId, 51_840n);
  await sql(
    `insert into "TaxRate" (id, "placeId", authority, "ratePercent", "fromOn")
     values (gen_random_uuid(), $1, 'County', 1, '2026-12-01')`,
    [gallery.taxPlaceId],
  );
  const layaway = await findLayaway(gallery.clerk, number, '2026-12-05');
  expect(layaway).toMatchObject({
    ...{ standing: 'running', agreedTotalCents: 51_840n },
    money: { totalCents: 52_320n, remainingCents: 480n },
  });
  const at = new Date('2026-12-05T20:00:00Z');
  const early = await handOverLayaway(doing(gallery.clerk, at), handing(layawayId));
  expect(early).toMatchObject({ refusal: { code: 'not_paid_off', remainingCents: 480n } });
});

const cancelling = (layawayId: string, keep: bigint) => ({
  ...ending(layawayId),
  ...{ keep, why: 'they moved away', how: 'same_way' as const },
});

test('cancelled, it gives back exactly what was paid less what is kept, and frees the pieces', async () => {
  const { layawayId, number, panel } = await aLayaway(gallery);
  await pay(gallery, doing(gallery.clerk), layawayId, 12_960n);
  await pay(gallery, doing(gallery.clerk), layawayId, 5_000n);
  const refused = [
    [gallery.owner, 17_961n, 'keeps_more_than_paid'],
    [gallery.clerk, 2_000n, 'keeping_is_the_owners'],
    [gallery.maker, 0n, 'not_allowed'],
  ] as const;
  for (const [actor, keep, code] of refused) {
    const no = await cancelLayaway(doing(actor), cancelling(layawayId, keep));
    expect(no).toMatchObject({ refusal: { code } });
  }
  const done = await cancelLayaway(doing(gallery.owner), cancelling(layawayId, 2_000n));
  expect(done).toMatchObject({ ok: true, value: { number, given: '15960', kept: '2000' } });
  expect(await heldFor(layawayId)).toBe(0n);
  expect(await levelOf(panel.skuId)).toEqual({ onHand: 1, held: 0 });
  const [debt] = await sql(
    'select coalesce(sum("amountCents"), 0)::int as sum from "Posting" where "layawayId" = $1',
    [layawayId],
  );
  expect(debt).toEqual({ sum: 0 });
  const { ended } = await listLayaways(gallery.clerk, today);
  expect(ended.find((each) => each.number === number)?.standing).toBe('cancelled');
});

test('a layaway that nothing was paid on is cancelled without a paper of money', async () => {
  const { layawayId } = await aLayaway(gallery);
  const done = await cancelLayaway(doing(gallery.clerk), cancelling(layawayId, 0n));
  expect(done).toMatchObject({ ok: true, value: { given: '0', kept: '0' } });
  const again = await cancelLayaway(doing(gallery.clerk), cancelling(layawayId, 0n));
  expect(again).toMatchObject({ refusal: { code: 'layaway_has_ended', how: 'cancelled' } });
});

test('the database itself refuses money of a layaway that was used already', async () => {
  const { layawayId } = await aLayaway(gallery);
  await pay(gallery, doing(gallery.clerk), layawayId, 51_840n);
  await handOverLayaway(doing(gallery.clerk), handing(layawayId));
  const failure: unknown = await spend(gallery, layawayId, 1n).catch((error: unknown) => error);
  expect(constraintOf(failure)).toBe('deposit_is_used_once');
});

test.each([
  ['a line is changed', 'update "LayawayLine" set quantity = 2 where "layawayId" = $1'],
  ['a due is deleted', 'delete from "LayawayDue" where "layawayId" = $1'],
])('the database itself refuses when %s', async (_label, statement) => {
  const { layawayId } = await aLayaway(gallery);
  const failure: unknown = await sql(statement, [layawayId]).catch((error: unknown) => error);
  expect(constraintOf(failure)).toBe('never_changed');
});
