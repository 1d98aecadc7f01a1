import 'server-only';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { comesFrom, type MouldKind, type MouldRefusal } from '../rules/moulds';

/** How many moulds back it is followed what one was made from. */
const generationsMost = 20;

/**
 * Whether a mould can have been made from another; joins the caller's transaction.
 *
 * @param mould `id` only of one that is written down already; `fromId` null for nobody knows
 * @returns refuses, in this order: an unknown source, one of another design, one that none is made
 *   from, one that was itself made from this
 */
export async function sourceFits(
  tx: Tx,
  mould: { id?: string; designId: string; kind: MouldKind; fromId: string | null },
): Promise<Result<true, MouldRefusal>> {
  if (mould.fromId === null) return ok(true);
  const select = { code: true, designId: true, kind: true, fromId: true };
  const source = await tx.mould.findUnique({ where: { id: mould.fromId }, select });
  if (!source) return refuse({ code: 'unknown_source' });
  const from = source.code;
  if (source.designId !== mould.designId) return refuse({ code: 'source_of_another_design', from });
  if (!comesFrom(mould.kind, source.kind)) return refuse({ code: 'not_made_from_that', from });
  let id: string | null = mould.fromId;
  for (let back = 0; id !== null && back < generationsMost; back += 1) {
    if (id === mould.id) return refuse({ code: 'made_from_itself', from });
    const before: { fromId: string | null } | null = await tx.mould.findUnique({
      where: { id },
      select: { fromId: true },
    });
    id = before?.fromId ?? null;
  }
  return ok(true);
}
