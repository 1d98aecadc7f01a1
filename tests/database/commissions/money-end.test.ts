import { beforeAll, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { aSlipWith, sellIt, toldBy } from '@/tests/database/counter/a-counter';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { agreed as handshake, asked, done, on } from './a-commission';
import { allSteps, making } from './a-making';
import { later, moneyActs, today, type MoneyActs } from './a-purse';
import { agreedByProposal, agreedOn, changeOffered, code, signChange } from './an-agreement';
import { booksOf } from './the-books';

let gallery: OpenGallery;
let acts: MoneyActs;
const fate = 'The finished parts are kept for stock.';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  acts = moneyActs(gallery);
});

/** Agreed over 10,400.00 with a signed change; half of the first 10,800.00 with tax is paid. */
async function paidHalf(steps?: number) {
  const agreed = await agreedByProposal(gallery);
  const { commissionId } = agreed;
  done(await signChange(on(gallery.owner, agreedOn), await changeOffered(gallery, commissionId)));
  const { paymentId } = done(await acts.pay(agreed, 540_000n));
  if (steps !== undefined) await making(gallery, commissionId, { day: today, steps });
  return { ...agreed, paymentId };
}

async function kept(commissionId: string) {
  const {
    stage,
    feeCents,
    keptCents,
    fate: said,
  } = await db().commissionEnding.findUniqueOrThrow({
    where: { commissionId },
  });
  return { stage, feeCents, keptCents, fate: said };
}

describe('an early end by the agreement', () => {
  test('before the making the design fee is kept, the rest goes back', async () => {
    const agreed = await paidHalf();
    const { commissionId, paymentId } = agreed;
    const { designFeeCents } = await db().agreement.findFirstOrThrow({ where: { commissionId } });
    done(await acts.endIt(agreed));
    const stage = 'before_making';
    const fees = { feeCents: designFeeCents, keptCents: designFeeCents };
    expect(await kept(commissionId)).toEqual({ stage, ...fees, fate: '' });
    const left = 540_000n - designFeeCents;
    expect(await booksOf(commissionId)).toEqual({
      ...{ '1010': 540_000n, '2000': -left, '4060': -designFeeCents },
    });
    expect(await acts.sums(agreed)).toMatchObject({ overpaidCents: left, dueCents: 0n });
    const figure = `${left / 100n}.${String(left % 100n).padStart(2, '0')}`;
    done(await acts.back(agreed, paymentId, figure, later));
    expect(await booksOf(commissionId)).toEqual({
      ...{ '1010': designFeeCents, '4060': -designFeeCents },
    });
    expect(await acts.sums(agreed)).toMatchObject({ overpaidCents: 0n, owedCents: 0n });
    expect(code(await acts.back(agreed, paymentId, '0.01', later))).toBe('refund_needs_deposit');
    expect(code(await acts.pay(agreed, 1n, { day: later }))).toBe('ended_early');
  });
  test('while it is made half of the price is kept, and the pieces have a word', async () => {
    const agreed = await paidHalf(4);
    expect(code(await acts.endIt(agreed))).toBe('pieces_need_a_fate');
    expect(await acts.sums(agreed)).toMatchObject({ paidCents: 540_000n, totalCents: 1_123_200n });
    done(await acts.endIt(agreed, { fate }));
    const fees = { feeCents: 520_000n, keptCents: 520_000n };
    expect(await kept(agreed.commissionId)).toEqual({ stage: 'making', ...fees, fate });
    expect(await acts.sums(agreed)).toMatchObject({ totalCents: 520_000n, overpaidCents: 20_000n });
  });
  test('once it is finished all of it is kept; what was not paid is owed and can come in', async () => {
    const agreed = await paidHalf(allSteps);
    done(await acts.endIt(agreed, { fate }));
    const fees = { feeCents: 1_040_000n, keptCents: 540_000n };
    expect(await kept(agreed.commissionId)).toEqual({ stage: 'finished', ...fees, fate });
    expect(await booksOf(agreed.commissionId)).toEqual({
      ...{ '1010': 540_000n, '1100': 500_000n, '4060': -1_040_000n },
    });
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 500_000n, dueCents: 500_000n });
    expect(code(await acts.pay(agreed, 500_001n, { day: later }))).toBe('more_than_owed');
    done(await acts.pay(agreed, 200_000n, { day: later, kind: 'cheque' }));
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 300_000n });
    done(await acts.pay(agreed, 310_000n, { day: later, kind: 'cash', keepsRest: true }));
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 0n, overpaidCents: 10_000n });
    expect(code(await acts.ask(agreed, 1n, null, later))).toBe('ended_early');
  });
  test('what is owed of it comes in at the counter too, and settles it', async () => {
    const agreed = await paidHalf(allSteps);
    done(await acts.endIt(agreed, { fate }));
    const clerk = on(gallery.clerk, later);
    const { commissionId } = agreed;
    const line = { kind: 'instalment', commissionId, cents: 500_000n } as const;
    const slipId = await aSlipWith(clerk, line);
    expect(toldBy(await sellIt(clerk, slipId, 500_000n))).toBe('done');
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 0n, overpaidCents: 0n });
    expect((await booksOf(commissionId))['1100']).toBeUndefined();
  });
});

describe('an early end otherwise than the agreement says', () => {
  test('the owner settles on another amount, up to the price, and on nothing', async () => {
    const agreed = await paidHalf();
    expect(code(await acts.endIt(agreed, { own: 1_040_001n }))).toBe('fee_above_price');
    done(await acts.endIt(agreed, { own: 0n }));
    expect(await acts.sums(agreed)).toMatchObject({ totalCents: 0n, overpaidCents: 540_000n });
    const all = await paidHalf();
    done(await acts.endIt(all, { own: 1_040_000n }));
    expect(await acts.sums(all)).toMatchObject({ owedCents: 500_000n });
  });
  test('a handshake without a clause keeps nothing', async () => {
    const { commissionId, number } = await asked(gallery.maker, agreedOn);
    const what = {
      commissionId,
      day: agreedOn,
      priceCents: 100_000n,
      depositCents: 50_000n,
    } as const;
    await handshake(gallery, what);
    const agreed = { commissionId, number };
    done(await acts.pay(agreed, 50_000n));
    done(await acts.endIt(agreed));
    expect(await acts.sums(agreed)).toMatchObject({ totalCents: 0n, overpaidCents: 50_000n });
  });
  test('never older than the last money that moved', async () => {
    const agreed = await agreedByProposal(gallery);
    const { paymentId } = done(await acts.pay(agreed, 540_000n));
    done(await acts.back(agreed, paymentId, '100', later));
    expect(await acts.endIt(agreed, { endedOn: today })).toEqual({
      ok: false,
      refusal: { code: 'end_before_payment', movedOn: later },
    });
    done(await acts.endIt(agreed, { endedOn: later }));
    await acts.sums(agreed);
  });
});

describe('two at once', () => {
  test('an end and the last refund: nothing goes back that stays', async () => {
    const agreed = await paidHalf();
    const both = [acts.endIt(agreed), acts.back(agreed, agreed.paymentId, '5400')];
    const [end, refund] = (await Promise.all(both)).map(code);
    expect([end, refund]).toContain('done');
    await acts.sums(agreed);
  });
  test('an end and a hand-over: it is one of them', async () => {
    const agreed = await paidHalf();
    const both = [acts.endIt(agreed), acts.handIt(agreed, 'They pay when it hangs.')];
    const codes = (await Promise.all(both)).map(code);
    expect(codes.filter((each) => each === 'done')).toHaveLength(1);
    await acts.sums(agreed);
  });
  test('an end and a payment: the money is held, or settles what stays', async () => {
    const agreed = await paidHalf();
    const both = [acts.endIt(agreed), acts.pay(agreed, 1_000n, { kind: 'cash' })];
    expect((await Promise.all(both)).map(code)[0]).toBe('done');
    await acts.sums(agreed);
  });
});
