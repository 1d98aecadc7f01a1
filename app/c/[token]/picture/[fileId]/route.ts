import { z } from 'zod';
import { pictureForCollector } from '@/lib/commissions/reads/page/files';
import { openForFile } from '../../../open-page';

type Context = { params: Promise<{ token: string; fileId: string }> };

/** A picture that this page shows; nothing else that is kept here, whoever asks. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const page = await openForFile(params);
  const fileId = z.uuid().safeParse((await params).fileId);
  const shows = page && fileId.success;
  const file = shows ? await pictureForCollector(page.link.commissionId, fileId.data) : null;
  if (!file) return new Response('No such picture is shown here.', { status: 404 });
  return new Response(new Uint8Array(file.bytes), {
    headers: { 'Content-Type': file.mediaType, 'Content-Disposition': 'inline' },
  });
}
