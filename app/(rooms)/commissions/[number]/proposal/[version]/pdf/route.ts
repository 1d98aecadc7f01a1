import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { listProposals } from '@/lib/commissions/reads/proposal/proposals';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { proposalPdf } from '@/lib/documents/commissions/proposal';
import { readSheet } from '../../../read-sheet';

type Params = Readonly<{ params: Promise<{ number: string; version: string }> }>;

/** A proposal as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const { version } = await params;
  const proposals = await listProposals(actor, sheet.id);
  const proposal = proposals.find((each) => String(each.version) === version);
  if (!proposal) notFound();
  const bytes = await proposalPdf(
    {
      ...{ proposal, work: sheet.title, collector: sheet.collector.name },
      ...{ commissionNumber: sheet.number, on: proposal.sent?.on ?? sheet.telling.today },
      picture: sheet.picture && (await readPaperPicture(sheet.picture.src)),
    },
    sheet.gallery,
  );
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="proposal-${sheet.number}-${proposal.version}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
