import 'server-only';
import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import { feeSentences, sizeSentence, stepWords } from '@/lib/commissions/rules/proposal/body';
import { formatDay, type Day } from '@/lib/dates/rules';
import { currencyNamed, formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import {
  fullPageOf,
  keepTogether,
  makePaper,
  ruleLine,
  wordsAndFigure,
  type Paper,
} from '../paper';
import {
  writeHashFoot,
  writeHeading,
  writePaperHead,
  writePicture,
  writeSignLines,
  writeWords,
} from './page';

/** A proposal with what its paper names besides. */
export type ProposalForPaper = {
  proposal: ProposalShown;
  work: string;
  collector: string;
  commissionNumber: number;
  on: Day;
  /** The newest sketch as JPEG or PNG; null where there is none. */
  picture: Uint8Array | null;
};

/** A proposal as a PDF on the gallery's own full page: what, price, plan, days, terms, two names. */
export async function proposalPdf(
  told: ProposalForPaper,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { proposal } = told;
  const title = `Proposal ${proposal.version}`;
  const write = (paper: Paper) => {
    writePaperHead(paper, { ...told, title });
    if (told.picture) writePicture(paper, told.picture, 210);
    if (proposal.understanding !== '') {
      writeHeading(paper, 'What is wished for');
      writeWords(paper, proposal.understanding);
    }
    writeHeading(paper, 'The piece');
    writeWords(paper, sizeSentence(proposal, gallery));
    writePrice(paper, proposal, gallery);
    writeTime(paper, proposal);
    if (proposal.notIncluded !== '') {
      writeHeading(paper, 'Not included');
      writeWords(paper, proposal.notIncluded);
    }
    writeHeading(paper, 'Terms');
    writeWords(paper, proposal.terms);
    writeSignLines(paper, ['For the gallery, and the day', `${told.collector}, and the day`]);
    writeHashFoot(paper, proposal.contentSha256);
  };
  return makePaper(`${title}: ${told.work}`, gallery, write, fullPageOf(gallery));
}

function writePrice(paper: Paper, proposal: ProposalShown, gallery: Gallery): void {
  const currency = currencyNamed(gallery.currency);
  const money = (cents: bigint) => formatCents(cents, { currency });
  const { lines, priceCents, totalCents, taxPlace, steps } = proposal;
  writeHeading(paper, 'The price');
  for (const line of lines) {
    keepTogether(paper, 18);
    wordsAndFigure(paper, line.words, money(line.amountCents));
  }
  ruleLine(paper);
  wordsAndFigure(paper, 'Before tax', money(priceCents));
  const taxWords = `Sales tax of ${taxPlace}, as it stands today`;
  wordsAndFigure(paper, taxWords, money(totalCents - priceCents));
  paper.font('bold').fontSize(12);
  wordsAndFigure(paper, 'Together', money(totalCents));
  paper.font('sans').fontSize(10);
  for (const sentence of feeSentences(proposal, money)) writeWords(paper, sentence);
  writeHeading(paper, 'The plan of payments');
  for (const step of steps) {
    keepTogether(paper, 18);
    wordsAndFigure(paper, stepWords(step), money(step.amountCents));
  }
}

function writeTime(paper: Paper, { readyFromOn, readyToOn, validUntilOn }: ProposalShown): void {
  writeHeading(paper, 'Time');
  const by = readyToOn && formatDay(readyToOn, 'long');
  const from = readyFromOn && formatDay(readyFromOn, 'long');
  const ready = by ? (from ? `Ready between ${from} and ${by}.` : `Ready by about ${by}.`) : '';
  writeWords(
    paper,
    `${ready} This proposal holds until ${formatDay(validUntilOn, 'long')}.`.trim(),
  );
}
