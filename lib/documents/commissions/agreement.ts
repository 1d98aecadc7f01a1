import 'server-only';
import type { SignatureShown } from '@/lib/commissions/reads/agreement/agreements';
import { formatInstant, type Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { ash, fullPageOf, iron, keepTogether, makePaper, sizeOf, type Paper } from '../paper';
import { writeHashFoot, writePaperHead, writeSignLines } from './page';

/** An agreement or a change order, word for word, with the name under it where there is one. */
export type SignedPaper = {
  body: string;
  contentSha256: string;
  work: string;
  collector: string;
  commissionNumber: number;
  on: Day;
  signature: SignatureShown | null;
  /** The drawn signature as a JPEG. */
  drawing: Uint8Array | null;
};

/** The agreement as a PDF: its words as they were signed, the name, and the hash of both. */
export async function agreementPdf(
  told: SignedPaper,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  return signedPdf('Agreement', told, gallery);
}

/** A change order as a PDF, as the agreement. */
export async function changeOrderPdf(
  told: SignedPaper & { number: number },
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  return signedPdf(`Change order ${told.number}`, told, gallery);
}

async function signedPdf(title: string, told: SignedPaper, gallery: Gallery) {
  const write = (paper: Paper) => {
    writePaperHead(paper, { ...told, title });
    writeBody(paper, told.body);
    if (told.signature) writeSignature(paper, told.signature, { drawing: told.drawing, gallery });
    else writeSignLines(paper, ['For the gallery, and the day', `${told.collector}, and the day`]);
    writeHashFoot(paper, told.contentSha256);
  };
  return makePaper(`${title}: ${told.work}`, gallery, write, fullPageOf(gallery));
}

/** Writes a text word for word: its first line is the head of the paper already, the rest is one thing a line. */
export function writeBody(paper: Paper, body: string): void {
  for (const line of body.split('\n').slice(1)) {
    keepTogether(paper, 30);
    paper.font('sans').fontSize(10).fillColor(iron).text(line, { lineGap: 2 }).moveDown(0.35);
  }
}

/** Writes the name under a paper: drawn or typed, and how and when it was given. */
export function writeSignature(
  paper: Paper,
  signature: SignatureShown,
  { drawing, gallery }: { drawing: Uint8Array | null; gallery: Gallery },
): void {
  keepTogether(paper, 120);
  const { margin } = sizeOf(paper);
  paper.moveDown(0.8);
  if (drawing) {
    const top = paper.y;
    paper.image(Buffer.from(drawing), margin, top, { fit: [220, 70] });
    paper.y = top + 76;
    paper.x = margin;
  } else {
    paper.font('italic').fontSize(18).text(signature.name);
  }
  const how = {
    typed: 'typed as a signature',
    drawn: 'drawn on the screen',
    on_paper: 'signed on paper, which the gallery keeps',
  };
  const capacity = signature.capacity === '' ? '' : `, ${signature.capacity}`;
  const where = signature.isOnTheirPage ? 'on their own page' : 'before the gallery';
  paper.font('sans').fontSize(9).fillColor(ash);
  paper.text(
    `${signature.name}${capacity}: ${how[signature.kind]}, ${where}, ${formatInstant(signature.at, gallery.timeZone)}`,
  );
  paper.fillColor(iron);
}
