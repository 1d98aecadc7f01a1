import 'server-only';
import { formatDay } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { ClaimTold } from '@/lib/sending/reads/told';
import { claimFile } from '@/lib/sending/rules/claim-file';
import { claimEventWords, claimStageWords } from '@/lib/sending/rules/claims';
import { dayOfEvent } from '@/lib/sending/rules/way';
import { writeHeading, writePicture, writeWords } from '../commissions/page';
import { fullPageOf, makePaper, wordsAndFigure, type Paper } from '../paper';
import { writeSendingHead, writeTick } from './head';

/** A claim with the bytes of its pictures, JPEG. */
export type ClaimSheet = {
  shipment: ShipmentTold;
  claim: ClaimTold;
  pictures: readonly Uint8Array[];
};

/**
 * The cover of a claim’s file as a PDF: carrier and number, days, what is broken, what is asked, which
 * papers are there, what came of it, and the pictures.
 */
export async function claimCoverPdf(
  { shipment, claim, pictures }: ClaimSheet,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const write = (paper: Paper) => {
    writeSendingHead(paper, `Claim ${claim.number}`, shipment);
    for (const [name, value] of factsOf(shipment, claim)) wordsAndFigure(paper, name, value);
    writeHeading(paper, 'What is broken');
    writeWords(paper, claim.words);
    writeHeading(paper, 'In this file');
    for (const { words, isThere } of claimFile(shipment, claim)) writeTick(paper, words, isThere);
    writeHeading(paper, `What came of it: ${claimStageWords[claim.stage]}`);
    for (const event of claim.events) {
      const amount = event.amountCents > 0n ? `, ${formatCents(event.amountCents)}` : '';
      const note = event.words === '' ? '' : `; ${event.words}`;
      writeWords(
        paper,
        `${formatDay(event.on, 'short')}, ${event.by}: ${claimEventWords[event.kind]}${amount}${note}`,
      );
    }
    for (const bytes of pictures) writePicture(paper, bytes, 260);
  };
  return makePaper(`Claim ${claim.number}`, gallery, write, fullPageOf(gallery));
}

function factsOf(shipment: ShipmentTold, claim: ClaimTold): [string, string][] {
  const { carrier, tracking, events, insuredCents, insuredBy, how } = shipment;
  const sentOn = dayOfEvent(events, 'sent') ?? dayOfEvent(events, 'fetched');
  const cameOn = dayOfEvent(events, 'arrived');
  return [
    ['Carrier', how === 'carrier' && carrier !== '' ? carrier : 'none: our own van, or fetched'],
    ['The carrier’s number', tracking === '' ? 'none' : tracking],
    ['Sent', sentOn ? formatDay(sentOn, 'short') : 'not known'],
    ['Arrived', cameOn ? formatDay(cameOn, 'short') : 'not known'],
    ['Found', formatDay(claim.foundOn, 'short')],
    ['To be told by', formatDay(claim.reportByOn, 'short')],
    ['To be claimed by', formatDay(claim.claimByOn, 'short')],
    ['Worth', insuredCents === 0n ? 'not written down' : formatCents(insuredCents)],
    ['Insured by', insuredBy === '' ? 'nobody named' : insuredBy],
    ['Asked for it', formatCents(claim.askedCents)],
  ];
}
