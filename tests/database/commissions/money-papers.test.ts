import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { askForMoneyInput } from '@/lib/commissions/input/money';
import { findInvoice } from '@/lib/commissions/reads/money/invoice';
import { findReceipt } from '@/lib/commissions/reads/money/receipt';
import { askForMoney, withdrawAsk } from '@/lib/commissions/writes/money/ask';
import { takePayment } from '@/lib/commissions/writes/money';
import { invoicePdf } from '@/lib/documents/commissions/invoice';
import { paymentSlipPdf } from '@/lib/documents/commissions/receipt';
import { db } from '@/lib/platform/db/client';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { aSlipWith, sellIt, toldBy } from '@/tests/database/counter/a-counter';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { readPaper } from '@/tests/helpers/paper-text';
import { aPayment, asked, done, on } from './a-commission';
import { agreedByProposal, agreedOn, changeOffered, signChange } from './an-agreement';

let gallery: OpenGallery;
const today = '2026-05-06';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

async function askFor(commissionId: string, fields: Record<string, unknown> = {}) {
  const form = askForMoneyInput.parse({
    ...{ requestKey: randomUUID(), commissionId, name: 'Deposit', amountCents: '5,400' },
    ...{ dueOn: '2026-05-18', stepPosition: '1', ...fields },
  });
  return done(await askForMoney(on(gallery.clerk, today), form));
}

async function agreedWithChange() {
  const agreed = await agreedByProposal(gallery);
  const change = await changeOffered(gallery, agreed.commissionId);
  done(await signChange(on(gallery.owner, agreedOn), change));
  return agreed;
}

async function invoiceOf(commissionId: string, number: number) {
  const told = await findInvoice(gallery.clerk, commissionId, { number, today });
  if (!told) throw new Error('What was asked for has its paper.');
  return told;
}

/** What a paper says, on US Letter and on A4: the same words on each, its fonts in the file. */
async function onBothSizes(make: (settings: Gallery) => Promise<Uint8Array>): Promise<string> {
  const settings = await getGallery();
  const letter = await readPaper(await make({ ...settings, paperSize: 'letter' }));
  const a4 = await readPaper(await make({ ...settings, paperSize: 'a4' }));
  expect([letter.width, letter.height]).toEqual([612, 792]);
  expect([Math.round(a4.width), Math.round(a4.height)]).toEqual([595, 842]);
  expect([letter.fontsInside, a4.fontsInside]).toEqual([true, true]);
  expect(a4.text).toBe(letter.text);
  return letter.text;
}

test('an invoice says what is agreed, what came in, and what is due of it', async () => {
  const { commissionId, number: commissionNumber } = await agreedWithChange();
  const { number } = await askFor(commissionId);
  done(await takePayment(on(gallery.clerk, today), aPayment(commissionId, 100_000n)));
  const told = await invoiceOf(commissionId, number);
  const text = await onBothSizes((settings) => invoicePdf(told, settings));
  // 9,400.00 + 600.00 + 400.00, 8 % of tax: 11,232.00; 5,400.00 of it asked for, 1,000.00 there.
  for (const words of [
    `Invoice ${number}`,
    `For Marit Oland · commission ${commissionNumber}`,
    'Deposit, due when it is agreed $5,400.00',
    'To be paid by Monday 18 May 2026 $4,400.00',
    'Change order 1, signed Monday 4 May 2026: Two more terns +$400.00',
    'Before tax $10,400.00',
    'State 6.5 % $676.00',
    'Together $11,232.00',
    'It is charged with the hand-over, at the rates of that day.',
    'Paid in all $1,000.00',
    'Open of the whole $10,232.00',
    'Balance, due before it is handed over $5,832.00',
    'How to pay',
  ]) {
    expect(text).toContain(words);
  }
});

test('an invoice that is paid, or was taken back, asks for nothing', async () => {
  const { commissionId } = await agreedWithChange();
  const clerk = on(gallery.clerk, today);
  const deposit = await askFor(commissionId);
  const more = await askFor(commissionId, { name: 'More', stepPosition: '', amountCents: '10' });
  const { instalmentId } = more;
  const back = { requestKey: randomUUID(), commissionId, instalmentId, why: 'A slip of the pen.' };
  done(await withdrawAsk(clerk, back));
  done(await takePayment(clerk, aPayment(commissionId, 540_000n)));
  const paid = await invoiceOf(commissionId, deposit.number);
  const paidText = await onBothSizes((settings) => invoicePdf(paid, settings));
  expect(paidText).toContain('To be paid $0.00 It is paid. Thank you.');
  expect(paidText).not.toContain('How to pay');
  const taken = await invoiceOf(commissionId, more.number);
  expect(await onBothSizes((settings) => invoicePdf(taken, settings))).toContain(
    'To be paid $0.00 It was taken back: A slip of the pen.',
  );
});

test('the number of one commission finds nothing under another', async () => {
  const { commissionId } = await agreedWithChange();
  const { number } = await askFor(commissionId);
  const other = await asked(gallery.maker, agreedOn);
  const which = { number, today } as const;
  expect(await findInvoice(gallery.clerk, other.commissionId, which)).toBeNull();
  await expect(findInvoice(gallery.maker, commissionId, which)).rejects.toThrow();
});

async function slipOf(commissionId: string, number: number) {
  const told = await findReceipt(gallery.clerk, commissionId, number);
  if (!told) throw new Error('What came in has its slip.');
  return told;
}

test('a payment slip says what it went to and what remained, whatever was signed later', async () => {
  const { commissionId } = await agreedByProposal(gallery);
  const clerk = on(gallery.clerk, today);
  const card = { ...aPayment(commissionId, 500_000n), reference: '000482' };
  const first = done(await takePayment(clerk, card));
  const { number } = done(await takePayment(clerk, aPayment(commissionId, 100_000n, 'cheque')));
  const told = await slipOf(commissionId, number);
  const text = await onBothSizes((settings) => paymentSlipPdf(told, settings));
  // 10,800.00 with tax, half of it down: 400.00 go to the deposit, 600.00 to the balance.
  for (const words of [
    `Payment slip ${number}`,
    'Received, with thanks Marit Oland $1,000.00',
    'Paid: cheque',
    'Deposit, of $5,400.00 $400.00',
    'Balance, of $5,400.00 $600.00',
    'It comes to, with the tax of that day $10,800.00',
    'Came in so far, less what went back $6,000.00',
    'Remaining $4,800.00',
    'The money is held as a deposit until the piece is handed over',
  ]) {
    expect(text).toContain(words);
  }
  expect((await slipOf(commissionId, first.number)).leftCents).toBe(580_000n);
  const change = await changeOffered(gallery, commissionId);
  done(await signChange(on(gallery.owner, '2026-05-07'), change));
  expect((await slipOf(commissionId, number)).totalCents).toBe(1_080_000n);
});

test('a payment at the counter by several tenders has each of them on its slip', async () => {
  const { commissionId } = await agreedByProposal(gallery);
  const clerk = on(gallery.clerk, today);
  const line = { kind: 'instalment', commissionId, cents: 250_000n } as const;
  const slipId = await aSlipWith(clerk, line);
  const cheque = { kind: 'cheque', amountCents: 100_000n, reference: 'no. 18' } as const;
  const card = { kind: 'card', amountCents: null, reference: '000483' } as const;
  const tenders = [cheque, card];
  expect(toldBy(await sellIt(clerk, slipId, 250_000n, { tenders }))).toBe('done');
  const { number } = await db().commissionPayment.findFirstOrThrow({ where: { commissionId } });
  const told = await slipOf(commissionId, number);
  const text = await onBothSizes((settings) => paymentSlipPdf(told, settings));
  expect(text).toMatch(/Paid with receipt \d+, in parts Cheque \$1,000\.00 Card \$1,500\.00/);
});

test('a slip of one commission is none of another', async () => {
  const [one, other] = [await agreedByProposal(gallery), await agreedByProposal(gallery)];
  const clerk = on(gallery.clerk, today);
  const { number } = done(await takePayment(clerk, aPayment(one.commissionId, 100n)));
  expect(await findReceipt(gallery.clerk, other.commissionId, number)).toBeNull();
});
