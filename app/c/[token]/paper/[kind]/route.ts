import { openForFile } from '../../../open-page';
import { readTheirPaper } from './their-papers';

type Context = { params: Promise<{ token: string; kind: string }> };

/** A paper of the collector's own, made from what their page shows. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const page = await openForFile(params);
  const paper = page && (await readTheirPaper(page, (await params).kind));
  if (!paper) return new Response('No such paper is kept here.', { status: 404 });
  return new Response(paper.bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${paper.name}.pdf"`,
    },
  });
}
