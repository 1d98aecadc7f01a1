import 'server-only';
import type { SettlementTold } from '@/lib/commissions/reads/money/settlement';
import { endStageWords } from '@/lib/commissions/rules/money/ending';
import { clauseSentence, piecesSentence } from '@/lib/commissions/rules/money/end-words';
import { formatDay, formatInstant } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { fullPageOf, makePaper, type Paper } from '../paper';
import { moneyIn, writeLine, writeQuiet, writeSum } from './money-parts';
import { writeHeading, writePaperHead, writeSignLines, writeWords } from './page';

/**
 * The settlement of an early end as a PDF: how far the work was, what stays by the agreement, what
 * of it was paid, what goes back or is still to be paid, what becomes of the pieces, and two names.
 */
export async function settlementPdf(
  told: SettlementTold,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { work, collector, commissionNumber, endedOn } = told;
  const title = 'Settlement of an early end';
  const write = (paper: Paper) => {
    writePaperHead(paper, { title, work, collector, commissionNumber, on: endedOn });
    writeQuiet(paper, told.address ?? '');
    writeEnd(paper, told);
    writeStays(paper, told, gallery);
    writeMoney(paper, told, gallery);
    writePieces(paper, told);
    writeWords(
      paper,
      'With this both sides have settled what came of the agreement. What the law says of an early end is not touched.',
    );
    writeSignLines(paper, ['For the gallery, and the day', `${collector}, and the day`]);
    writeQuiet(
      paper,
      `Written by ${told.writtenBy}, ${formatInstant(told.writtenAt, gallery.timeZone)}.`,
    );
  };
  return makePaper(`${title}: ${work}`, gallery, write, fullPageOf(gallery));
}

function writeEnd(paper: Paper, { why, endedOn, stage, agreed }: SettlementTold): void {
  writeHeading(paper, 'How it ended');
  const how = stage === null ? '' : `, ${endStageWords[stage]}`;
  writeWords(paper, `The commission ended on ${formatDay(endedOn, 'long')}${how}.`);
  writeWords(paper, `Why: ${why}`);
  if (agreed) {
    const { on, by } = agreed;
    writeWords(paper, `The agreement was signed by ${by} on ${formatDay(on, 'long')}.`);
  } else {
    writeWords(paper, 'Nothing had been agreed.');
  }
}

function writeStays(paper: Paper, told: SettlementTold, gallery: Gallery): void {
  const { stage, agreed, byAgreementCents, feeCents } = told;
  const money = moneyIn(gallery);
  writeHeading(paper, 'What stays with the gallery');
  if (stage && agreed) {
    writeWords(paper, clauseSentence(stage, agreed.terms, money));
    writeLine(paper, 'The price with its signed changes, before tax', money(agreed.priceCents));
    writeLine(paper, 'By the agreement', money(byAgreementCents));
  }
  writeSum(paper, 'What stays', money(feeCents));
  if (feeCents !== byAgreementCents) {
    writeWords(paper, 'The gallery settled on this amount instead of what the agreement says.');
  }
}

function writeMoney(paper: Paper, told: SettlementTold, gallery: Gallery): void {
  const { paidThenCents, keptCents, feeCents, toGoBackCents, stillOwedCents } = told;
  const money = moneyIn(gallery);
  writeHeading(paper, 'What goes back, and what is still to be paid');
  writeLine(paper, 'Paid until it ended, less what had gone back', money(paidThenCents));
  writeLine(paper, 'Of it kept', money(keptCents));
  if (told.wentBackSinceCents > 0n) {
    writeLine(paper, 'To go back', money(paidThenCents - keptCents));
    writeLine(paper, 'Went back since', money(told.wentBackSinceCents));
  }
  if (feeCents > keptCents)
    writeLine(paper, 'Of what stays not paid then', money(feeCents - keptCents));
  if (told.cameInSinceCents > 0n) {
    writeLine(paper, 'Came in since', money(told.cameInSinceCents));
  }
  if (stillOwedCents > 0n) writeSum(paper, 'Still to be paid', money(stillOwedCents));
  else writeSum(paper, 'Still to go back', money(toGoBackCents));
}

function writePieces(paper: Paper, { jobs, fate }: SettlementTold): void {
  writeHeading(paper, 'What becomes of the pieces');
  for (const job of jobs) writeWords(paper, piecesSentence(job));
  if (jobs.length === 0) writeWords(paper, 'No job was opened; nothing was made.');
  writeWords(paper, fate);
}
