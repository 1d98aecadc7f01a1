import { z } from 'zod';
import { findActor } from '@/lib/access/reads';
import { allow } from '@/lib/access/rules';
import { findFile } from '@/lib/files/reads';

type Context = { params: Promise<{ id: string }> };

/** A kept file under its own address: never changes, so a browser may keep it for a year. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const actor = await findActor();
  if (!actor) return plain(401, 'Sign in to see this picture.');
  if (!allow(actor, 'files.see').ok) return plain(403, 'This picture is not yours to see.');
  const id = z.uuid().safeParse((await params).id);
  const file = id.success ? await findFile(actor, id.data) : null;
  if (!file) return plain(404, 'No such picture is kept here.');

  const headers = keptHeaders(file);
  if (request.headers.get('if-none-match') === headers.ETag) {
    return new Response(null, { status: 304, headers });
  }
  return new Response(new Uint8Array(file.bytes), { headers });
}

function keptHeaders(file: { sha256: string; mediaType: string; bytes: Uint8Array }) {
  const isPicture = /^image\/(jpeg|webp|png)$/.test(file.mediaType);
  return {
    'Content-Type': file.mediaType,
    // Only a picture is shown in the browser; anything else is kept as a file and never run.
    'Content-Disposition': isPicture ? 'inline' : 'attachment',
    'Cache-Control': 'private, max-age=31536000, immutable',
    ETag: `"${file.sha256}"`,
  };
}

function plain(status: number, sentence: string): Response {
  return new Response(sentence, {
    status,
    headers: { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' },
  });
}
