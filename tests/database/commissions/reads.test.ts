import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { listCommissions, listCommissionsOver, listWaiting } from '@/lib/commissions/reads';
import { listHistory, listShown } from '@/lib/commissions/reads/papers';
import { findPayment, listMoneyLines } from '@/lib/commissions/reads/payments';
import { findSheet } from '@/lib/commissions/reads/sheet';
import { endCommission } from '@/lib/commissions/writes/end';
import { handOver } from '@/lib/commissions/writes/hand-over';
import { askForMoney } from '@/lib/commissions/writes/money/ask';
import { takePayment } from '@/lib/commissions/writes/money';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { aPayment, agreed, asked, done, on, readyForClay, sketched } from './a-commission';

let gallery: OpenGallery;
let numbers: { asked: number; shown: number; ready: number; owing: number; over: number };
let readyId: string;
const day = '2026-05-12';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const first = await asked(gallery.maker, '2026-05-01');
  const second = await asked(gallery.maker, '2026-05-02', {
    ...{ title: 'Kelp for a bath', newName: 'Kenji Aldersey' },
  });
  await sketched(gallery.maker, second.commissionId, '2026-05-10');
  const ready = await readyForClay(gallery, day);
  readyId = ready.commissionId;
  const owing = await handedOver('Otters');
  const over = await asked(gallery.maker, day, { title: 'Never made' });
  const end = { requestKey: randomUUID(), commissionId: over.commissionId, why: 'Declined.' };
  done(await endCommission(on(gallery.owner, day), { ...end, endedOn: day }));
  numbers = {
    asked: first.number,
    shown: second.number,
    ready: ready.number,
    owing: owing.number,
    over: over.number,
  };
});

async function handedOver(title: string) {
  const made = await asked(gallery.maker, day, { title });
  const { commissionId } = made;
  await agreed(gallery, { commissionId, day, priceCents: 100_000n, depositCents: 0n });
  const names = { requestKey: randomUUID(), commissionId, signedBy: 'Marit Oland' };
  const signed = { ...names, evenIfOwed: 'They pay when it hangs.' };
  done(await handOver(on(gallery.owner, day), { ...signed, handedOn: day }));
  return made;
}

describe('the list', () => {
  test('holds what is going on, the most overdue first, then the longest waiting, and nothing that is over', async () => {
    const listed = await listCommissions(gallery.owner);
    expect(listed.map((each) => [each.number, each.where])).toEqual([
      [numbers.owing, 'rest_owed'],
      [numbers.asked, 'to_propose'],
      [numbers.shown, 'sketch_shown'],
      [numbers.ready, 'clay_to_begin'],
    ]);
    expect(listed[0]?.over.join()).toContain('$1,080.00 is ');
  });
  test('what has ended is over; what is paid after the hand-over joins it', async () => {
    const paid = await handedOver('Paid at once');
    done(
      await takePayment(on(gallery.clerk, day), aPayment(paid.commissionId, 108_000n, 'cheque')),
    );
    const over = await listCommissionsOver(gallery.owner);
    expect(over.map((each) => each.number).sort()).toEqual([numbers.over, paid.number].sort());
  });
  test.each([
    ['a title with a slip of the pen', 'Kepl for a bath', () => [numbers.shown]],
    ['a collector', 'aldersey', () => [numbers.shown]],
    ['a number', '1', () => [numbers.asked]],
    ['nothing like it', 'zqxv', () => []],
  ])('finds by %s', async (_label, letters, expected) => {
    const found = await listCommissions(gallery.maker, letters);
    expect(found.map((each) => each.number)).toEqual(expected());
  });
  test('tells the first page of the day what waits, without amounts for the maker', async () => {
    const owner = await listWaiting(gallery.owner);
    const maker = await listWaiting(gallery.maker);
    const sentence = (rows: typeof owner) =>
      rows.find((each) => each.number === numbers.owing)?.sentence;
    expect(sentence(owner)).toContain('pay the rest, $1,080.00.');
    expect(sentence(maker)).toContain('pay the rest.');
    expect(owner.find((each) => each.number === numbers.shown)).toMatchObject({
      href: `/commissions/${numbers.shown}`,
      collector: 'Kenji Aldersey',
      waitsOn: 'collector',
      since: '2026-05-10',
    });
    expect(owner.find((each) => each.number === numbers.shown)?.pictureUrl).toMatch(/^\/files\//);
  });
});

describe('the sheet', () => {
  test('reckons the tax at today’s rate until the hand-over', async () => {
    const sheet = await findSheet(gallery.owner, numbers.ready);
    expect(sheet?.money).toMatchObject({
      priceCents: 1_000_000n,
      taxCents: 80_000n,
      paidCents: 500_000n,
      owedCents: 580_000n,
      depositLeftCents: 0n,
    });
    expect(sheet?.mayBegin).toEqual({ may: true, missing: [], byOverride: false });
    expect(sheet?.picture?.alt).toContain('the approved sketch');
    expect(sheet?.band.filter((peg) => peg.state === 'done')).toHaveLength(4);
  });
  test('shows a maker no money', async () => {
    const sheet = await findSheet(gallery.maker, numbers.ready);
    expect(sheet).toMatchObject({ money: null, paidCents: null });
  });
  test('is not found for a number that nobody gave', async () => {
    expect(await findSheet(gallery.owner, 99_999)).toBeNull();
  });
  test('tells who said yes to which bytes, and the whole history', async () => {
    const shown = await listShown(gallery.maker, readyId);
    expect(shown.map((each) => [each.what, each.label, each.yes?.approvedBy])).toEqual([
      ['sketch', 'A', 'Marit Oland'],
      ['colour_tile', '1', 'Marit Oland'],
    ]);
    const history = await listHistory(gallery.maker, readyId, { currency: 'USD' });
    expect(history[0]?.sentence).toBe('Tobias Fenn opened the job.');
    expect(history.at(-1)?.sentence).toBe('Tobias Fenn wrote down the request.');
    expect(history.map((line) => line.sentence).join(' ')).not.toContain('$');
  });
  test('keeps a running sum of what came in, and what it came in for', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    await agreed(gallery, { commissionId, day, priceCents: 100_000n, depositCents: 50_000n });
    const ask = { requestKey: randomUUID(), commissionId, name: 'Deposit', amountCents: 50_000n };
    const { instalmentId } = done(
      await askForMoney(on(gallery.clerk, day), { ...ask, dueOn: '2026-05-20' }),
    );
    const first = { ...aPayment(commissionId, 30_000n), instalmentId };
    done(await takePayment(on(gallery.clerk, day), first));
    const { number } = done(
      await takePayment(on(gallery.clerk, day), aPayment(commissionId, 10_000n)),
    );
    const lines = await listMoneyLines(gallery.books, commissionId);
    expect(lines.asked).toMatchObject([
      { name: 'Deposit', paidCents: 40_000n, namedCents: 30_000n },
    ]);
    expect(lines.payments.map((each) => each.paidSoFarCents)).toEqual([30_000n, 40_000n]);
    expect(await findPayment(gallery.books, commissionId, number)).toMatchObject({
      amountCents: 10_000n,
      paidSoFarCents: 40_000n,
      forWhat: null,
      takenBy: 'Perrin Oday',
    });
    expect(await findPayment(gallery.books, readyId, number)).toBeNull();
  });
});
