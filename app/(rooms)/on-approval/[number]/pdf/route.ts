import { notFound } from 'next/navigation';
import { readNumber } from '@/app/(rooms)/holds/[number]/read-number';
import { requireActor } from '@/lib/access/reads';
import { approvalSlipPdf } from '@/lib/documents/approval-slip';
import { findApproval } from '@/lib/holds/reads/approvals';
import { getGallery } from '@/lib/platform/settings';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** The slip of pieces on approval as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('stock.hold');
  const number = readNumber((await params).number);
  const approval = number === null ? null : await findApproval(actor, number);
  if (!approval) notFound();
  const bytes = await approvalSlipPdf(approval, await getGallery());
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="on-approval-${approval.number}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
