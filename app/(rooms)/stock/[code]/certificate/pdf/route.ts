import { notFound } from 'next/navigation';
import { queryOf } from '@/app/ui/certificate/certificate-address';
import { requireActor } from '@/lib/access/reads';
import { certificatePdf } from '@/lib/documents/goes-with/certificate';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { readCertifiedPiece } from '../certified-piece';

type RouteProps = Readonly<{ params: Promise<{ code: string }> }>;

/** The certificate of a piece as a PDF, as its form was filled in. */
export async function GET(request: Request, { params }: RouteProps): Promise<Response> {
  const actor = await requireActor('stock.see');
  const { code } = await params;
  const read = await readCertifiedPiece(actor, code, queryOf(request));
  const { piece, many, address, gallery, today } = read;
  if (!address.asked || !many) notFound();
  const bytes = await certificatePdf(
    {
      ...{ said: address.asked, many, known: piece.code, agreedOn: null, on: today },
      picture: piece.pictureUrl === null ? null : await readPaperPicture(piece.pictureUrl),
    },
    gallery,
  );
  return pdfAnswer(bytes, `certificate-${piece.code}`);
}
