import 'server-only';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import { onlyKnownSigns } from '../labels/signs';
import { ash, iron, keepTogether, ruleLine, sizeOf, type Paper } from '../paper';

/** What a shipment is for, in a few words: `commission 12, Fern bank`, `receipt 1207`. */
export function forWhatWords({ forWhat }: Pick<ShipmentTold, 'forWhat'>): string {
  const { commission, sale } = forWhat;
  if (commission) return `commission ${commission.number}, ${commission.title}`;
  return sale ? `receipt ${sale.number}` : '';
}

/** Writes the head of a shipment’s paper: what it is, of which shipment, to whom. */
export function writeSendingHead(
  paper: Paper,
  title: string,
  shipment: Pick<ShipmentTold, 'number' | 'toName' | 'forWhat'>,
): void {
  paper.font('serif').fontSize(18).fillColor(iron).text(title);
  const words = [`Shipment ${shipment.number}`, forWhatWords(shipment), `to ${shipment.toName}`];
  const line = words.filter((each) => each !== '').join(' · ');
  paper.font('sans').fontSize(9.5).fillColor(ash);
  paper.text(onlyKnownSigns(paper, line, 'sans'));
  paper.fillColor(iron).moveDown(0.5);
  ruleLine(paper);
  paper.moveDown(0.3);
}

/** A box to tick, and what it says; the words run on under themselves. */
export function writeTick(paper: Paper, words: string, isTicked = false): void {
  const { width, margin } = sizeOf(paper);
  paper.font('sans').fontSize(10);
  const wide = width - 2 * margin - 20;
  keepTogether(paper, paper.heightOfString(words, { width: wide }) + 6);
  const top = paper.y;
  paper
    .rect(margin, top + 1, 10, 10)
    .lineWidth(0.8)
    .strokeColor(iron)
    .stroke();
  if (isTicked) {
    paper.moveTo(margin + 2, top + 6).lineTo(margin + 4.5, top + 9);
    paper
      .lineTo(margin + 9, top + 2.5)
      .lineWidth(1.2)
      .stroke();
  }
  paper.fillColor(iron).text(words, margin + 20, top, { width: wide });
  paper.x = margin;
  paper.moveDown(0.3);
}

/** Lines to write on by hand. */
export function writeBlankLines(paper: Paper, many: number): void {
  const { width, margin } = sizeOf(paper);
  keepTogether(paper, many * 22 + 6);
  for (let line = 0; line < many; line += 1) {
    const y = paper.y + 20;
    paper
      .moveTo(margin, y)
      .lineTo(width - margin, y)
      .lineWidth(0.4)
      .strokeColor(ash)
      .stroke();
    paper.y = y + 2;
  }
  paper.moveDown(0.4);
}

/** Numbers in a row told shortly. @example numbersWords([1, 2, 3, 7]) // '1–3, 7' */
export function numbersWords(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].toSorted((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const number of sorted) {
    const last = runs.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', ');
}
