import { z } from 'zod';
import { findActor } from '@/lib/access/reads';
import { deviceWords } from '@/lib/access/rules/device';
import { workEntryInput } from '@/lib/installation/input/work/entry';
import { workRefusalMessage } from '@/lib/installation/rules/work/refusals';
import { keepWorkEntry } from '@/lib/installation/writes/work/keep-entry';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

type Context = Readonly<{ params: Promise<{ id: string }> }>;

/**
 * Takes in what a device kept of a work order while it had no line: one entry, and its picture. An
 * address of its own, as a page that was kept for a day may be older than the product's actions.
 */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const actor = await findActor();
  if (!actor) return answer(401, { as: 'signed_out' });
  if (!isFromHere(request)) return refusal(403, 'This came from another house.');
  const read = await readEntry(request);
  if (!read || read.entry.appointmentId !== (await params).id) {
    return refusal(400, 'This cannot be read. Put it away, and write it again.');
  }
  const { entry, picture } = read;
  const device = deviceWords(request.headers.get('user-agent') ?? '');
  const kept = await keepWorkEntry({ actor, at: now() }, entry, { picture, device });
  if (kept.ok) return answer(200, { as: 'kept' });
  return refusal(200, workRefusalMessage(kept.refusal, (await getGallery()).timeZone));
}

const jsonText = z.string().transform((text, context): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    context.addIssue({ code: 'custom', message: 'This is no entry.' });
    return z.NEVER;
  }
});
const sent = z.object({
  entry: jsonText.pipe(workEntryInput),
  picture: z.instanceof(Blob).optional(),
});

async function readEntry(request: Request) {
  const form = await request.formData().catch(() => null);
  const read = sent.safeParse(form ? Object.fromEntries(form) : {});
  return read.success ? { entry: read.data.entry, picture: read.data.picture ?? null } : null;
}

/** Whether a page of ours sent it: no other house may write with somebody's cookie. */
function isFromHere({ headers }: Request): boolean {
  const site = headers.get('sec-fetch-site');
  if (site !== null) return site === 'same-origin';
  const origin = headers.get('origin');
  const host = headers.get('x-forwarded-host') ?? headers.get('host');
  return origin !== null && URL.canParse(origin) && new URL(origin).host === host;
}

function refusal(status: number, sentence: string): Response {
  return answer(status, { as: 'refused', sentence });
}

function answer(status: number, body: Record<string, string>): Response {
  return Response.json(body, { status, headers: { 'Cache-Control': 'no-store' } });
}
