import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import type { PaymentKind } from '@/lib/commissions/rules/words';
import { withdrawAsk } from '@/lib/commissions/writes/money/ask';
import { takePayment } from '@/lib/commissions/writes/money';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { aPayment, done, on } from './a-commission';
import { later, moneyActs, today, type MoneyActs } from './a-purse';
import { agreedByProposal, agreedOn, changeOffered, code, signChange } from './an-agreement';
import { booksOf } from './the-books';

let gallery: OpenGallery;
let acts: MoneyActs;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  acts = moneyActs(gallery);
});

describe('a payment entered twice', () => {
  test('with one key is one, with another it is asked about, and said to be another it is one', async () => {
    const agreed = await agreedByProposal(gallery);
    const form = { ...aPayment(agreed.commissionId, 100_000n), reference: '000482' };
    const clerk = on(gallery.clerk, today);
    const first = done(await takePayment(clerk, form));
    expect(done(await takePayment(clerk, form))).toEqual(first);
    expect((await acts.sums(agreed)).paidCents).toBe(100_000n);
    const again = { ...form, requestKey: randomUUID() };
    expect(await takePayment(clerk, again)).toEqual({
      ok: false,
      refusal: { code: 'looks_like_twice', number: first.number, receivedOn: today },
    });
    done(await takePayment(clerk, { ...again, isAnother: true }));
    expect((await acts.sums(agreed)).paidCents).toBe(200_000n);
  });
  test('the same slip number on another day is asked about, the same cash is not', async () => {
    const agreed = await agreedByProposal(gallery);
    done(await acts.pay(agreed, 100_000n, { kind: 'cheque', reference: 'no. 18' }));
    const cheque = { kind: 'cheque', reference: 'no. 18', day: later } as const;
    expect(code(await acts.pay(agreed, 100_000n, cheque))).toBe('looks_like_twice');
    done(await acts.pay(agreed, 100_000n, { ...cheque, reference: 'no. 19' }));
    done(await acts.pay(agreed, 100_000n, { kind: 'cash' }));
    expect(code(await acts.pay(agreed, 100_000n, { kind: 'cash' }))).toBe('looks_like_twice');
    done(await acts.pay(agreed, 100_000n, { kind: 'cash', day: later }));
    expect((await acts.sums(agreed)).paidCents).toBe(400_000n);
  });
  test('by two people at once it is one, and the other is asked', async () => {
    const agreed = await agreedByProposal(gallery);
    const both = await Promise.all([acts.pay(agreed, 50_000n), acts.pay(agreed, 50_000n)]);
    expect(both.map(code).sort()).toEqual(['done', 'looks_like_twice']);
    expect((await acts.sums(agreed)).paidCents).toBe(50_000n);
  });
});

describe('money comes in parts', () => {
  test('by cash, card, cheque and transfer, and each lies where it should', async () => {
    const agreed = await agreedByProposal(gallery);
    expect(await acts.sums(agreed)).toMatchObject({ totalCents: 1_080_000n, dueCents: 540_000n });
    const parts: [PaymentKind, string, bigint][] = [
      ['cash', '1000', 100_001n],
      ['card', '1010', 200_002n],
      ['cheque', '1020', 300_003n],
      ['bank_transfer', '1030', 400_004n],
    ];
    let paid = 0n;
    for (const [kind, account, cents] of parts) {
      done(await acts.pay(agreed, cents, { kind }));
      paid += cents;
      expect((await booksOf(agreed.commissionId))[account]).toBe(cents);
      expect(await acts.sums(agreed)).toMatchObject({
        ...{ paidCents: paid, owedCents: 1_080_000n - paid },
        dueCents: paid < 540_000n ? 540_000n - paid : 0n,
      });
    }
  });
  test('a cent too much is refused, or kept for them until it goes back', async () => {
    const agreed = await agreedByProposal(gallery);
    const all = { keepsRest: true };
    expect(code(await acts.pay(agreed, 1_080_001n))).toBe('more_than_owed');
    const { paymentId } = done(await acts.pay(agreed, 1_100_000n, all));
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 0n, overpaidCents: 20_000n });
    done(await acts.handIt(agreed, null));
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 0n, overpaidCents: 20_000n });
    expect(await acts.back(agreed, paymentId, '200.01')).toEqual({
      ok: false,
      refusal: { code: 'refund_needs_deposit', heldCents: 20_000n },
    });
    done(await acts.back(agreed, paymentId, '200'));
    expect(await acts.sums(agreed)).toMatchObject({ paidCents: 1_080_000n, overpaidCents: 0n });
    expect((await booksOf(agreed.commissionId))['2000']).toBeUndefined();
  });
  test('before the hand-over all of it can go back, of each payment at most what it was', async () => {
    const agreed = await agreedByProposal(gallery);
    const first = done(await acts.pay(agreed, 100_000n));
    const second = done(await acts.pay(agreed, 200_000n, { kind: 'cash' }));
    expect(await acts.back(agreed, first.paymentId, '1000.01')).toEqual({
      ok: false,
      refusal: { code: 'refund_above_payment', leftCents: 100_000n },
    });
    done(await acts.back(agreed, first.paymentId, '600'));
    expect(await acts.sums(agreed)).toMatchObject({ paidCents: 240_000n, dueCents: 300_000n });
    const other = await agreedByProposal(gallery);
    expect(code(await acts.back(other, second.paymentId, '1'))).toBe('unknown_payment');
    const both = [
      acts.back(agreed, first.paymentId, '400'),
      acts.back(agreed, first.paymentId, '400'),
    ];
    expect((await Promise.all(both)).map(code).sort()).toEqual(['done', 'refund_above_payment']);
    expect(await acts.sums(agreed)).toMatchObject({ paidCents: 200_000n });
  });
});

describe('asking follows the plan', () => {
  test('what falls due when it hangs is asked for after the hand-over, and no cent beyond', async () => {
    const plan = {
      ...{ stepName2: 'When it hangs', stepEvent2: 'hung', stepMuch2: '' },
    };
    const agreed = await agreedByProposal(gallery, plan);
    done(await acts.ask(agreed, 540_000n, 1));
    expect(code(await acts.ask(agreed, 1n, 1))).toBe('step_asked_already');
    done(await acts.pay(agreed, 540_000n));
    expect(await acts.sums(agreed)).toMatchObject({ dueCents: 0n, invoicedCents: 540_000n });
    done(await acts.handIt(agreed, null));
    expect(await acts.sums(agreed)).toMatchObject({ dueCents: 540_000n, owedCents: 540_000n });
    const both = [acts.ask(agreed, 540_000n, 2), acts.ask(agreed, 540_000n, 2)];
    expect((await Promise.all(both)).map(code).sort()).toEqual(['done', 'step_asked_already']);
    expect(code(await acts.ask(agreed, 1n, null))).toBe('more_than_to_ask');
    done(await acts.pay(agreed, 540_000n, { kind: 'bank_transfer' }));
    expect(await acts.sums(agreed)).toMatchObject({ dueCents: 0n, invoicedCents: 1_080_000n });
  });
});

test('what was asked for by mistake is taken back, once nothing of it is there any more', async () => {
  const agreed = await agreedByProposal(gallery);
  const { commissionId } = agreed;
  const { instalmentId } = done(await acts.ask(agreed, 100_000n, null));
  const clerk = on(gallery.clerk, today);
  const paid = { ...aPayment(commissionId, 40_000n), instalmentId };
  const { paymentId } = done(await takePayment(clerk, paid));
  const takeBack = () => {
    const why = 'A slip of the pen.';
    return withdrawAsk(clerk, { requestKey: randomUUID(), commissionId, instalmentId, why });
  };
  expect(code(await takeBack())).toBe('ask_is_paid');
  done(await acts.back(agreed, paymentId, '400'));
  done(await takeBack());
  expect(code(await takeBack())).toBe('unknown_ask');
  expect(await acts.sums(agreed)).toMatchObject({ invoicedCents: 0n, paidCents: 0n });
});

describe('a hand-over earns what was agreed', () => {
  test('line by line, with its tax; what is paid beyond what is owed is held again', async () => {
    const agreed = await agreedByProposal(gallery);
    const { commissionId } = agreed;
    done(await signChange(on(gallery.owner, agreedOn), await changeOffered(gallery, commissionId)));
    done(await acts.pay(agreed, 540_000n));
    expect(code(await acts.handIt(agreed, null))).toBe('balance_still_owed');
    done(await acts.handIt(agreed, 'They pay when it hangs.'));
    // 9,400.00 + 400.00 of work, 600.00 of hanging, 8 % on all of it.
    expect(await booksOf(commissionId)).toEqual({
      ...{ '1010': 540_000n, '1100': 583_200n, '2100': -83_200n },
      ...{ '4010': -980_000n, '4030': -60_000n },
    });
    expect(await acts.sums(agreed)).toMatchObject({ totalCents: 1_123_200n, owedCents: 583_200n });
    done(await acts.pay(agreed, 600_000n, { kind: 'cheque', keepsRest: true }));
    expect(await booksOf(commissionId)).toMatchObject({ '1020': 600_000n, '2000': -16_800n });
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 0n, overpaidCents: 16_800n });
  });
  test('and the last payment at the same moment is a deposit before it or owed after it', async () => {
    const agreed = await agreedByProposal(gallery);
    done(await acts.pay(agreed, 540_000n));
    const both = await Promise.all([
      acts.pay(agreed, 540_000n, { kind: 'cash' }),
      acts.handIt(agreed, 'They pay when it hangs.'),
    ]);
    expect(both.map(code)).toEqual(['done', 'done']);
    expect(await acts.sums(agreed)).toMatchObject({ owedCents: 0n, overpaidCents: 0n });
  });
});
