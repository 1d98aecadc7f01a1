import 'server-only';
import { writeHeading, writeWords } from '@/lib/documents/commissions/page';
import { addressLines } from '@/lib/documents/rules';
import { careParts, type CareAbout } from '@/lib/documents/rules/goes-with/care';
import type { Gallery } from '@/lib/platform/settings';
import { ash, fullPageOf, iron, makePaper, ruleLine, type Paper } from '../paper';

/** A piece that is given away with a care sheet. */
export type CareSheet = {
  title: string;
  /** What it is, as on its wall label. */
  what: string;
  /** By what one finds it again: its SKU, or the number of its commission. */
  known: string;
  about: CareAbout;
};

/** The care sheet as a PDF: how to look after a piece, by what it is and where it lives. */
export async function careSheetPdf(
  sheet: CareSheet,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const write = (paper: Paper) => {
    paper.font('serif').fontSize(18).fillColor(iron).text('How to look after it');
    paper.font('italic').fontSize(13).text(sheet.title);
    paper.font('sans').fontSize(9.5).fillColor(ash);
    paper.text([sheet.what, sheet.known].filter(Boolean).join(' · '));
    paper.fillColor(iron).moveDown(0.5);
    ruleLine(paper);
    for (const { heading, sentences } of careParts(sheet.about)) {
      writeHeading(paper, heading);
      for (const sentence of sentences) writeWords(paper, sentence);
    }
    writeHeading(paper, 'Whom to call');
    writeWords(paper, [gallery.name, ...addressLines(gallery).slice(-1)].join(' · '));
    writeWords(
      paper,
      `Say the name of the piece and “${sheet.known}”: clay, glazes and fixings are written down under it.`,
    );
  };
  return makePaper(`Care: ${sheet.title}`, gallery, write, fullPageOf(gallery));
}
