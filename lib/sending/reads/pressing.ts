import 'server-only';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { listOpenClaims, listShipments } from './shipments';

/** What of sending presses: what came and was not looked at while damage can be told, open claims. */
export async function countSending(
  actor: Actor,
  today: Day,
): Promise<{ toAsk: number; claims: number }> {
  const [shipments, claims] = await Promise.all([
    listShipments(actor, today),
    listOpenClaims(actor),
  ]);
  const toAsk = shipments.filter(({ asks }) => asks === 'look_at_it').length;
  return { toAsk, claims: claims.length };
}
