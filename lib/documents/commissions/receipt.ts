import 'server-only';
import type { ReceiptTold } from '@/lib/commissions/reads/money/receipt';
import { paymentWords } from '@/lib/commissions/rules/words';
import { formatInstant } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { fullPageOf, makePaper, type Paper } from '../paper';
import { tenderWords } from '../rules';
import { moneyIn, writeLine, writeQuiet, writeSum } from './money-parts';
import { writeHeading, writePaperHead, writeSignLines } from './page';

/**
 * The slip of one payment as a PDF: how much, from whom, how it was paid, what it went to, and what
 * was left after it. It says what stood when the money came in, and so always the same.
 */
export async function paymentSlipPdf(
  told: ReceiptTold,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { payment, work, collector, commissionNumber } = told;
  const title = `Payment slip ${payment.number}`;
  const write = (paper: Paper) => {
    const on = payment.receivedOn;
    writePaperHead(paper, { title, work, collector, commissionNumber, on });
    writeReceived(paper, told, gallery);
    writeWent(paper, told, gallery);
    writeAfter(paper, told, gallery);
    writeQuiet(paper, slipSentence(told));
    writeSignLines(paper, ['Received for the gallery', 'The day']);
  };
  return makePaper(`${title}: ${work}`, gallery, write, fullPageOf(gallery));
}

function writeReceived(paper: Paper, { payment, slip }: ReceiptTold, gallery: Gallery): void {
  const money = moneyIn(gallery);
  const { paidBy, receivedAt, takenBy, kind, reference, amountCents } = payment;
  writeHeading(paper, 'Received, with thanks');
  writeSum(paper, paidBy, money(amountCents));
  const reading = reference === '' ? '' : `, ${reference}`;
  const tenders = slip?.tenders ?? [];
  if (slip && tenders.length > 1) {
    writeLine(paper, `Paid with receipt ${slip.number}, in parts`, '');
    for (const each of tenders) writeLine(paper, tenderWords[each.kind], money(each.amountCents));
  } else {
    const on = slip ? `, with receipt ${slip.number}` : '';
    writeLine(paper, `Paid: ${paymentWords[kind]}${reading}${on}`, '');
  }
  writeQuiet(paper, `${formatInstant(receivedAt, gallery.timeZone)}, taken by ${takenBy}`);
}

function writeWent(paper: Paper, told: ReceiptTold, gallery: Gallery): void {
  const { payment, covered } = told;
  const money = moneyIn(gallery);
  if (covered.steps.length === 0 && covered.beyondCents === 0n) return;
  writeHeading(paper, 'What it went to');
  for (const { name, cents, ofCents } of covered.steps) {
    const of = cents < ofCents ? `, of ${money(ofCents)}` : ', the whole of it';
    writeLine(paper, `${name}${of}`, money(cents));
  }
  if (covered.beyondCents > 0n) {
    writeLine(paper, 'More than it comes to, kept for them', money(covered.beyondCents));
  }
  if (payment.forWhat !== null) writeQuiet(paper, `It was asked for as: ${payment.forWhat}.`);
}

/** What a payment came in against, as the slip names it. */
const totalNames: Record<ReceiptTold['of'], string> = {
  agreed: 'It comes to, with the tax of that day',
  handed_over: 'It came to at the hand-over, with tax',
  ended: 'What stays of the early end',
};

function writeAfter(paper: Paper, told: ReceiptTold, gallery: Gallery): void {
  const { payment, totalCents, leftCents, of } = told;
  const money = moneyIn(gallery);
  writeHeading(paper, 'Where it stands with this payment');
  writeLine(paper, totalNames[of], money(totalCents));
  writeLine(paper, 'Came in so far, less what went back', money(payment.paidSoFarCents));
  writeSum(paper, 'Remaining', money(leftCents));
}

function slipSentence({ of }: ReceiptTold): string {
  switch (of) {
    case 'agreed':
      return 'This slip is not an invoice. The money is held as a deposit until the piece is handed over; the tax is charged then, and the receipt of that day shows it.';
    case 'handed_over':
      return 'This slip is not an invoice. The piece was handed over; its receipt shows the tax.';
    case 'ended':
      return 'This slip is not an invoice. The commission ended early; its settlement says what stays.';
  }
}
