import { notFound } from 'next/navigation';
import { queryOf, readCertificateAddress } from '@/app/ui/certificate/certificate-address';
import { requireActor } from '@/lib/access/reads';
import { readGoesWith } from '@/lib/commissions/reads/goes-with';
import { certificatePdf } from '@/lib/documents/goes-with/certificate';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { readSheet, type SheetParams } from '../../read-sheet';
import { knownForCertificate } from '../known-for-certificate';

/** The certificate of a commissioned piece as a PDF, as its form was filled in. */
export async function GET(
  request: Request,
  { params }: Readonly<{ params: SheetParams }>,
): Promise<Response> {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const { number, gallery, telling } = sheet;
  const goesWith = await readGoesWith(actor, sheet);
  const known = knownForCertificate(sheet, goesWith);
  const { asked: said } = readCertificateAddress(queryOf(request), known);
  if (!said) notFound();
  const { agreedOn, pictureFileId } = goesWith;
  const bytes = await certificatePdf(
    {
      ...{ said, agreedOn, on: telling.today, known: `commission ${number}` },
      many: { kind: 'one' },
      picture: pictureFileId === null ? null : await readPaperPicture(pictureFileId),
    },
    gallery,
  );
  return pdfAnswer(bytes, `certificate-${number}`);
}
