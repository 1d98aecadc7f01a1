import 'server-only';
import { formatDay, type Day } from '@/lib/dates/rules';
import { boxWords } from '@/lib/freight/rules/tiers';
import type { Gallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import { ownTerms } from '@/lib/sending/rules/carriers';
import { limitsOf } from '@/lib/sending/rules/limits';
import { weightOf } from '@/lib/sending/rules/reckoning';
import { sidesTyped, weighedIn } from '@/lib/sending/rules/typed/line';
import { formatWeight } from '@/lib/units/rules';
import { writeHeading, writeSignLines, writeWords } from '../commissions/page';
import { fullPageOf, makePaper, type Paper } from '../paper';
import { writeBlankLines, writeSendingHead, writeTick } from './head';

/**
 * The slip for whoever receives it, as a PDF: the boxes to count, what to do before signing, by when
 * damage must be told, and room for what is seen, a name and an hour.
 */
export async function receivingSlipPdf(
  shipment: ShipmentTold,
  { gallery, today }: { gallery: Gallery; today: Day },
): Promise<Uint8Array<ArrayBuffer>> {
  const write = (paper: Paper) => {
    writeSendingHead(paper, 'When it comes', shipment);
    writeHeading(paper, 'Before you sign for it');
    for (const words of beforeSigning) writeTick(paper, words);
    writeHeading(paper, 'The boxes');
    for (const words of boxLines(shipment, gallery)) writeTick(paper, words);
    writeHeading(paper, 'Tell us by');
    for (const words of tellBy(shipment, { gallery, today })) writeWords(paper, words);
    writeHeading(paper, 'Then');
    for (const words of afterwards) writeTick(paper, words);
    writeHeading(paper, 'Marks seen, on which box');
    writeBlankLines(paper, 2);
    writeSignLines(paper, ['Name of whoever received it', 'Day and hour', 'Signature']);
  };
  return makePaper(`When shipment ${shipment.number} comes`, gallery, write, fullPageOf(gallery));
}

const beforeSigning = [
  'Count the boxes, and look at each from all sides: dents, tears, wet spots, wrong way up.',
  'Write what you see on the carrier’s own delivery receipt, and only then sign it.',
];

const afterwards = [
  'Open it within a day, even if it looks whole outside. Two people for what is over 50 lb.',
  'A picture of each layer before it is moved, and of anything broken where it lies.',
  'Keep every box, all padding and every fragment until it is settled. Shards cut: gloves on.',
  'Do not hang it before it was looked at; the packing list says how it comes out.',
];

function boxLines({ boxes }: ShipmentTold, { lengthUnit }: Gallery): string[] {
  return boxes.map((box) => {
    const size = sidesTyped([box.lengthUm, box.widthUm, box.heightUm], lengthUnit);
    const weight = formatWeight(weightOf(box), weighedIn(lengthUnit));
    return `${box.position} of ${boxes.length}: ${boxWords[box.kind]}, ${size}, ${weight}`;
  });
}

function tellBy(
  shipment: ShipmentTold,
  { gallery, today }: { gallery: Gallery; today: Day },
): string[] {
  const { events, terms, stage } = shipment;
  const days = (terms ?? ownTerms).reportDays;
  const { reportBy, claimBy } = limitsOf(events, terms, { foundOn: today, today });
  const reach = [gallery.phone, gallery.email].filter((each) => each !== '').join(' or ');
  const us = reach === '' ? 'us' : `us, ${reach}`;
  if (stage === 'arrived') {
    return [
      `It came; what is broken must be told to ${us}, by ${formatDay(reportBy.byOn, 'long')}.`,
      `After ${formatDay(claimBy.byOn, 'long')} nothing can be claimed any more.`,
    ];
  }
  const within = days === 1 ? 'within a day' : `within ${days} days`;
  const claim = events.some(({ kind }) => kind === 'sent')
    ? [`After ${formatDay(claimBy.byOn, 'long')} nothing can be claimed any more.`]
    : [];
  return [
    `What is broken must be told to ${us}, ${within} after it came, damage that is found inside too.`,
    'It came on ____________________, so at the latest on ____________________.',
    ...claim,
  ];
}
