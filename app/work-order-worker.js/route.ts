import { findActor } from '@/lib/access/reads';
import { workerSource } from './source';

/** The worker that opens a work order's page again where there is no line. */
export async function GET(): Promise<Response> {
  if (!(await findActor())) return new Response(null, { status: 401 });
  return new Response(workerSource, {
    headers: { 'Content-Type': 'text/javascript; charset=utf-8', 'Cache-Control': 'no-store' },
  });
}
