import 'server-only';
import type { InvoiceTold } from '@/lib/commissions/reads/money/invoice';
import { eventWords } from '@/lib/commissions/rules/proposal/plan';
import { paymentWords } from '@/lib/commissions/rules/words';
import { formatDay } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { fullPageOf, keepTogether, makePaper, type Paper } from '../paper';
import { moneyIn, writeLine, writePlan, writePrice, writeQuiet, writeSum } from './money-parts';
import { writeHeading, writePaperHead, writeWords } from './page';

/**
 * What was asked for as a PDF: its number and days, what is agreed with every signed change and the
 * tax, what came in, what of it is due now, what is still to come, and how to pay.
 */
export async function invoicePdf(
  told: InvoiceTold,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const title = `Invoice ${told.ask.number}`;
  const { work, collector, commissionNumber, address } = told;
  const money = moneyIn(gallery);
  const write = (paper: Paper) => {
    const on = told.ask.askedOn;
    writePaperHead(paper, { title, work, collector, commissionNumber, on });
    writeQuiet(paper, address ?? '');
    writeDue(paper, told, gallery);
    writePrice(paper, told.price, money);
    writeCameIn(paper, told, gallery);
    if (told.facts.ending === null) writePlan(paper, told.plan, money);
    writeHowToPay(paper, told, gallery);
    writeQuiet(paper, `As it stands on ${formatDay(told.today, 'long')}.`);
  };
  return makePaper(`${title}: ${work}`, gallery, write, fullPageOf(gallery));
}

function writeDue(paper: Paper, told: InvoiceTold, gallery: Gallery): void {
  const { ask, event, leftCents } = told;
  const money = moneyIn(gallery);
  const by = event === null ? '' : `, due ${eventWords[event]}`;
  writeHeading(paper, 'What this asks for');
  writeLine(paper, `${ask.name}${by}`, money(ask.amountCents));
  if (ask.paidCents > 0n) writeLine(paper, 'Came in for it', money(-ask.paidCents));
  const owed = leftCents > 0n;
  const due = `To be paid by ${formatDay(ask.dueOn, 'long')}`;
  writeSum(paper, owed ? due : 'To be paid', money(leftCents));
  const why = whyNothing(told);
  if (!owed && why !== '') writeWords(paper, why);
  if (owed && !told.price.tax.isFixed) {
    writeQuiet(
      paper,
      'It is a part of the price, asked for before the piece is handed over. Until then what is paid is held as a deposit; the receipt of the hand-over shows the tax.',
    );
  }
}

function whyNothing({ ask, facts }: InvoiceTold): string {
  if (ask.withdrawnWhy !== null) return `It was taken back: ${ask.withdrawnWhy}`;
  if (facts.ending) {
    return `The commission ended on ${formatDay(facts.ending.endedOn, 'long')}; its settlement says what is still to be paid.`;
  }
  return 'It is paid. Thank you.';
}

function writeCameIn(paper: Paper, told: InvoiceTold, gallery: Gallery): void {
  const { payments, refunds, paidCents, owedCents, facts } = told;
  const money = moneyIn(gallery);
  keepTogether(paper, 70);
  writeHeading(paper, 'What came in');
  for (const { number, kind, receivedOn, amountCents } of payments) {
    const words = `Slip ${number}, ${formatDay(receivedOn, 'long')}, ${paymentWords[kind]}`;
    writeLine(paper, words, money(amountCents));
  }
  for (const { kind, refundedOn, amountCents, ofPayment } of refunds) {
    const words = `Given back of slip ${ofPayment}, ${formatDay(refundedOn, 'long')}, ${paymentWords[kind]}`;
    writeLine(paper, words, money(-amountCents));
  }
  if (payments.length === 0) writeLine(paper, 'Nothing yet', money(0n));
  else writeLine(paper, 'Paid in all', money(paidCents));
  if (facts.ending === null) writeLine(paper, 'Open of the whole', money(owedCents));
}

function writeHowToPay(
  paper: Paper,
  { ask, commissionNumber, leftCents }: InvoiceTold,
  gallery: Gallery,
): void {
  if (leftCents === 0n) return;
  writeHeading(paper, 'How to pay');
  const reach = [gallery.phone, gallery.email].filter(Boolean).join(' or ');
  const names = `invoice ${ask.number} and commission ${commissionNumber}`;
  writeWords(
    paper,
    `In cash or by card at the gallery, by cheque to ${gallery.name}, or by bank transfer. Please name ${names}.`,
  );
  const askUs = reach === '' ? 'Ask us' : `Ask us, ${reach},`;
  writeWords(
    paper,
    `${askUs} for the account to transfer to; we never send a changed one by mail. Please do not write the number of a card in a letter.`,
  );
}
