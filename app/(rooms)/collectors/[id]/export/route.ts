import { requireActor } from '@/lib/access/reads';
import { keptPage } from '@/lib/collectors/rules/export';
import { eraseRefusalMessage } from '@/lib/collectors/rules/erase';
import { handOutKept } from '@/lib/collectors/writes/export';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

type Params = Readonly<{ params: Promise<{ id: string }> }>;

/** Everything kept of one person as one file, `?as=page` to be read and printed; it is written down. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('collectors.erase');
  const at = now();
  const { timeZone } = await getGallery();
  const kept = await handOutKept({ actor, at }, (await params).id);
  if (!kept.ok) {
    return new Response(eraseRefusalMessage(kept.refusal), {
      status: kept.refusal.code === 'unknown_collector' ? 404 : 409,
      headers: { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' },
    });
  }
  const isPage = new URL(request.url).searchParams.get('as') === 'page';
  const name = `kept-of-one-person-${dayOf(at, timeZone)}.${isPage ? 'html' : 'json'}`;
  return new Response(isPage ? keptPage(kept.value) : kept.value, {
    headers: {
      'Content-Type': isPage ? 'text/html; charset=utf-8' : 'application/json; charset=utf-8',
      'Content-Disposition': `attachment; filename="${name}"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
