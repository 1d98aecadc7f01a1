import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { invoiceForCollector } from '@/lib/commissions/reads/money/invoice';
import { moneyForCollector } from '@/lib/commissions/reads/money/for-collector';
import { findSheet } from '@/lib/commissions/reads/sheet';
import { endCommission } from '@/lib/commissions/writes/end';
import { askForMoney, withdrawAsk } from '@/lib/commissions/writes/money/ask';
import { takePayment } from '@/lib/commissions/writes/money';
import { invariant } from '@/lib/platform/invariant';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { aPayment, asked, done, on } from './a-commission';
import { agreedByProposal, agreedOn, changeOffered, signChange } from './an-agreement';

let gallery: OpenGallery;
const today = '2026-05-06';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

async function theirs(commissionId: string) {
  const money = await moneyForCollector(commissionId, today);
  invariant(money, 'What is agreed has its money.');
  return money;
}

function ask(commissionId: string, amountCents: bigint, stepPosition: number | null) {
  const form = { requestKey: randomUUID(), commissionId, name: 'Deposit', amountCents };
  return askForMoney(on(gallery.clerk, today), { ...form, stepPosition, dueOn: '2026-05-18' });
}

test('a collector sees what is agreed, paid, due and to come, and when each falls due', async () => {
  const { commissionId, number } = await agreedByProposal(gallery);
  const change = await changeOffered(gallery, commissionId, { dueEvent: 'out_of_bisque' });
  done(await signChange(on(gallery.owner, agreedOn), change));
  const asks = done(await ask(commissionId, 540_000n, 1));
  const mistaken = done(await ask(commissionId, 1_000n, null));
  const { instalmentId } = mistaken;
  const back = { requestKey: randomUUID(), commissionId, instalmentId, why: 'A slip of the pen.' };
  done(await withdrawAsk(on(gallery.clerk, today), back));
  const paid = { ...aPayment(commissionId, 200_000n), paidBy: 'Her brother' };
  done(await takePayment(on(gallery.clerk, today), paid));
  const told = await theirs(commissionId);
  expect(told.price.lines.map(({ words }) => words)).toEqual([
    'The work, at the studio',
    'Hanging',
  ]);
  expect(told.price.changes).toMatchObject([{ number: 1, priceCents: 40_000n }]);
  expect(told.money).toMatchObject({
    ...{ priceCents: 1_040_000n, taxCents: 83_200n, totalCents: 1_123_200n },
    ...{ invoicedCents: 540_000n, paidCents: 200_000n, dueCents: 340_000n },
    ...{ owedCents: 923_200n, overpaidCents: 0n },
  });
  expect(told.plan).toMatchObject([
    { name: 'Deposit', event: 'agreed', dueSince: agreedOn, leftCents: 340_000n },
    { name: 'Balance', event: 'before_hand_over', dueSince: null, leftCents: 583_200n },
  ]);
  expect(told.asked).toEqual([
    {
      ...{ number: asks.number, name: 'Deposit', amountCents: 540_000n, paidCents: 200_000n },
      dueOn: '2026-05-18',
    },
  ]);
  const sheet = await findSheet(gallery.owner, number);
  expect(told.money).toEqual(sheet?.money);
  expect(told.plan).toEqual(sheet?.plan);
});

test('their page names nobody else, and shows no reason of the gallery', async () => {
  const { commissionId } = await agreedByProposal(gallery);
  done(await ask(commissionId, 540_000n, 1));
  const paid = { ...aPayment(commissionId, 200_000n), paidBy: 'Her brother' };
  done(await takePayment(on(gallery.clerk, today), { ...paid, reference: 'no. 18' }));
  const told = await theirs(commissionId);
  const words = JSON.stringify(told, (_key, value: unknown) =>
    typeof value === 'bigint' ? value.toString() : value,
  );
  for (const name of ['Her brother', 'no. 18', 'Perrin Oday', 'Ines Vale']) {
    expect(words).not.toContain(name);
  }
});

test('an invoice opens under its own commission alone; nothing agreed is no money', async () => {
  const { commissionId } = await agreedByProposal(gallery);
  const { number } = done(await ask(commissionId, 540_000n, 1));
  const other = await agreedByProposal(gallery);
  const which = { number, today } as const;
  expect(await invoiceForCollector(other.commissionId, which)).toBeNull();
  expect(await invoiceForCollector(commissionId, which)).toMatchObject({ leftCents: 540_000n });
  const { commissionId: bare } = await asked(gallery.maker, agreedOn);
  expect(await moneyForCollector(bare, today)).toBeNull();
});

test('after an early end they see what stays and what is kept for them', async () => {
  const { commissionId } = await agreedByProposal(gallery);
  done(await takePayment(on(gallery.clerk, today), aPayment(commissionId, 540_000n)));
  const end = { requestKey: randomUUID(), commissionId, why: 'The house was sold.' };
  const ended = { ...end, endedOn: today, ownFeeCents: 40_000n } as const;
  done(await endCommission(on(gallery.owner, today), ended));
  const { money, plan, endedOn } = await theirs(commissionId);
  expect([plan, endedOn]).toEqual([[], today]);
  expect(money).toMatchObject({ totalCents: 40_000n, owedCents: 0n, overpaidCents: 500_000n });
});
