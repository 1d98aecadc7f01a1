import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import type { TakeBackInput } from '@/lib/returns/input';
import { strikeOut, takeBack } from '@/lib/returns/writes';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { done, on } from './a-commission';
import { later, moneyActs, today, type Agreed, type MoneyActs } from './a-purse';
import { agreedByProposal, code } from './an-agreement';
import { booksOf } from './the-books';

// A commission is sold for good, but the owner may let something off on its receipt: the hanging that
// was not done, or the whole hand-over on its own day. The page follows the books.

let gallery: OpenGallery;
let acts: MoneyActs;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  acts = moneyActs(gallery);
});

async function saleOf({ commissionId }: Agreed) {
  const { sale } = await db().handOver.findUniqueOrThrow({
    where: { commissionId },
    select: { sale: { select: { number: true, lines: { select: { id: true, kind: true } } } } },
  });
  return sale;
}

/** Lets the hanging off, 600.00 and 48.00 of tax. */
async function hangingBack(agreed: Agreed, how: TakeBackInput['how'], feePercent = '0') {
  const { number: saleNumber, lines } = await saleOf(agreed);
  const hanging = lines.filter(({ kind }) => kind === 'installation');
  return takeBack(on(gallery.owner, later), {
    ...{ requestKey: randomUUID(), saleNumber, kind: 'returned', how, feePercent, refunds: [] },
    reason: 'They hung it themselves.',
    lines: hanging.map(({ id: lineId }) => ({
      ...{ lineId, pieces: 1, numbers: [], to: 'nothing', flaw: '' },
    })),
  });
}

async function handedOver(paidCents: bigint): Promise<Agreed> {
  const agreed = await agreedByProposal(gallery);
  done(await acts.pay(agreed, paidCents));
  done(await acts.handIt(agreed, 'They pay when it hangs.'));
  return agreed;
}

describe('what is let off after the hand-over', () => {
  test('is taken off what is owed', async () => {
    const agreed = await handedOver(540_000n);
    done(await hangingBack(agreed, 'same_way'));
    expect(await acts.sums(agreed)).toMatchObject({ totalCents: 1_015_200n, owedCents: 475_200n });
    done(await acts.pay(agreed, 475_200n, { day: later }));
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 0n, overpaidCents: 0n });
  });
  test('with a fee, so much less of it', async () => {
    const agreed = await handedOver(540_000n);
    done(await hangingBack(agreed, 'same_way', '10'));
    expect(await acts.sums(agreed)).toMatchObject({ totalCents: 1_021_200n, owedCents: 481_200n });
  });
  test('becomes a store credit where it was all paid before', async () => {
    const agreed = await handedOver(1_080_000n);
    done(await hangingBack(agreed, 'store_credit'));
    expect(await acts.sums(agreed)).toMatchObject({
      ...{ totalCents: 1_015_200n, paidCents: 1_015_200n, overpaidCents: 0n, owedCents: 0n },
    });
    expect((await booksOf(agreed.commissionId))['2210']).toBe(-64_800n);
  });
  test('where the rest came in since, it is never taken off a debt that is settled', async () => {
    const agreed = await handedOver(540_000n);
    done(await acts.pay(agreed, 540_000n, { day: later }));
    expect(code(await hangingBack(agreed, 'same_way'))).toBe('only_as_credit');
    done(await hangingBack(agreed, 'store_credit'));
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 0n, overpaidCents: 0n });
  });
});

test('a hand-over that is struck out on its day earns nothing, and the deposit is held again', async () => {
  const agreed = await handedOver(540_000n);
  const { number: saleNumber } = await saleOf(agreed);
  const reason = 'It was the wrong commission.';
  done(await strikeOut(on(gallery.owner, today), { requestKey: randomUUID(), saleNumber, reason }));
  expect(await acts.sums(agreed)).toMatchObject({ totalCents: 0n, overpaidCents: 540_000n });
});
