import 'server-only';
import { formatDay } from '@/lib/dates/rules';
import { handsCautions, handsFor } from '@/lib/freight/rules/hands';
import { boxWords } from '@/lib/freight/rules/tiers';
import type { Gallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { BoxKept } from '@/lib/sending/reads/stored';
import { weightOf } from '@/lib/sending/rules/reckoning';
import { namedTyped, sidesTyped, weighedIn } from '@/lib/sending/rules/typed/line';
import { formatWeight, type LengthSystem } from '@/lib/units/rules';
import { writeHeading, writeWords } from '../commissions/page';
import { ash, fullPageOf, iron, makePaper, type Paper } from '../paper';
import { numbersWords, writeSendingHead, writeTick } from './head';

/**
 * The packing list as a PDF: how it is unpacked, then each box, n of N, with what is in it layer by
 * layer from the top down, as it comes out; parts by their numbers. It says no value.
 */
export async function packingListPdf(
  shipment: ShipmentTold,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { boxes } = shipment;
  const write = (paper: Paper) => {
    writeSendingHead(paper, 'Packing list', shipment);
    writeHowToUnpack(paper, shipment);
    for (const box of boxes) writeBox(paper, box, { of: boxes.length, unit: gallery.lengthUnit });
    writeHeading(paper, 'Packed by, and the day');
    const packed = shipment.events.find(({ kind }) => kind === 'packed');
    writeWords(
      paper,
      packed ? `${packed.by}, ${formatDay(packed.on, 'long')}. ${packed.words}` : '______________',
    );
  };
  return makePaper(`Packing list ${shipment.number}`, gallery, write, fullPageOf(gallery));
}

const unpacking = [
  'Count the boxes against this list, and look at each from outside, before you sign for them.',
  'Open the face that is marked; a crate with a screwdriver, never a bar. No knife goes inside.',
  'Take out layer by layer, as told here from the top down; a picture of each before it is moved.',
  'Two people for what is over 50 lb. Lift by the board or from beneath, never by the relief.',
  'Keep every box and all padding until everything is found whole.',
];

function writeHowToUnpack(paper: Paper, { boxes }: ShipmentTold): void {
  const parts = boxes.flatMap(({ contents }) => contents.flatMap((each) => each.partNumber ?? []));
  const many = boxes.length === 1 ? 'One box' : `${boxes.length} boxes`;
  const numbered = parts.length === 0 ? '' : `, parts ${numbersWords(parts)}`;
  writeHeading(paper, `${many}${numbered}. How it is unpacked`);
  for (const words of unpacking) writeTick(paper, words);
}

function writeBox(
  paper: Paper,
  box: BoxKept,
  { of, unit }: { of: number; unit: LengthSystem },
): void {
  const { position, kind, lengthUm, widthUm, heightUm, contents, note } = box;
  writeHeading(paper, `Box ${position} of ${of}: ${boxWords[kind]}`);
  const weight = formatWeight(weightOf(box), weighedIn(unit));
  const measured = box.scaleG === null ? `about ${weight}` : `${weight} on the scale`;
  paper.font('sans').fontSize(9.5).fillColor(ash);
  paper.text(`${sidesTyped([lengthUm, widthUm, heightUm], unit)} outside, ${measured}`);
  const hands = handsCautions[handsFor(weightOf(box))];
  if (hands) paper.text(hands);
  paper.fillColor(iron).moveDown(0.3);
  const layers = [...new Set(contents.map(({ layer }) => layer))].toSorted((a, b) => b - a);
  for (const [at, layer] of layers.entries()) {
    if (layers.length > 1) writeWords(paper, `${at + 1}. ${layerName(at, layers.length)}`);
    for (const content of contents.filter((each) => each.layer === layer)) {
      writeTick(paper, namedTyped(content));
    }
  }
  writeWords(paper, note);
}

function layerName(at: number, of: number): string {
  if (at === 0) return 'On top';
  return at === of - 1 ? 'At the bottom' : 'Then';
}
