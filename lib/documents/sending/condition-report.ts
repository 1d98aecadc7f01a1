import 'server-only';
import { formatDay } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { ReportTold, ViewTold } from '@/lib/sending/reads/told';
import type { MarkTold } from '@/lib/sending/rules/condition';
import { whenWords } from '@/lib/sending/rules/condition';
import { writeHeading, writeSignLines, writeWords } from '../commissions/page';
import { fullPageOf, iron, keepTogether, makePaper, sizeOf, type Paper } from '../paper';
import { writeSendingHead } from './head';

/** A report with the bytes of its pictures, JPEG, in the order of its views; null for one that is gone. */
export type ConditionSheet = {
  shipment: Pick<ShipmentTold, 'number' | 'toName' | 'forWhat'>;
  report: ReportTold;
  pictures: readonly (Uint8Array | null)[];
};

/** A condition report as a PDF: its words, each picture with its numbered marks, and what each says. */
export async function conditionReportPdf(
  { shipment, report, pictures }: ConditionSheet,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const title = `Condition, ${whenWords[report.when]}`;
  const write = (paper: Paper) => {
    writeSendingHead(paper, title, shipment);
    writeWords(paper, `Looked at on ${formatDay(report.on, 'long')} by ${report.by}.`);
    writeHeading(paper, 'In words');
    writeWords(paper, report.words);
    for (const [at, view] of report.views.entries()) {
      writeView(paper, view, { number: at + 1, bytes: pictures[at] ?? null });
    }
    writeSignLines(paper, ['For the gallery, and the day', 'Whoever looked with us, and the day']);
  };
  return makePaper(title, gallery, write, fullPageOf(gallery));
}

/** The most that a picture takes of a page, in points. */
const pictureHighMost = 270;

function writeView(
  paper: Paper,
  view: ViewTold,
  { number, bytes }: { number: number; bytes: Uint8Array | null },
): void {
  if (!bytes) return;
  const { width: pageWidth, margin } = sizeOf(paper);
  const room = pageWidth - 2 * margin;
  const scale = Math.min(room / view.width, pictureHighMost / view.height);
  const [width, height] = [view.width * scale, view.height * scale];
  keepTogether(paper, height + 60 + 14 * Math.min(8, view.marks.length));
  writeHeading(paper, `Picture ${number}`);
  const top = paper.y;
  paper.image(Buffer.from(bytes), margin, top, { width, height });
  paper.rect(margin, top, width, height).lineWidth(0.5).strokeColor(iron).stroke();
  for (const [at, mark] of view.marks.entries()) {
    drawMark(paper, mark, { number: at + 1, left: margin, top, width, height });
  }
  paper.x = margin;
  paper.y = top + height + 8;
  for (const [at, { words }] of view.marks.entries()) writeWords(paper, `${at + 1}. ${words}`);
}

type On = { number: number; left: number; top: number; width: number; height: number };

function drawMark(paper: Paper, { x, y }: MarkTold, on: On): void {
  const [atX, atY] = [on.left + (x / 1000) * on.width, on.top + (y / 1000) * on.height];
  paper.circle(atX, atY, 8.5).lineWidth(1.5).fillAndStroke(iron, 'white');
  paper.font('bold').fontSize(9).fillColor('white');
  const words = String(on.number);
  paper.text(words, atX - paper.widthOfString(words) / 2, atY - 6, { lineBreak: false });
  paper.fillColor(iron);
}
