import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayOf } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { StateEditionInput } from '../input/moulds';
import type { StateEditionRefusal } from '../rules/edition';

/**
 * States an edition: how many there will ever be. Said once, before the first piece comes, and
 * never raised.
 *
 * @returns refuses, in this order: not allowed, an unknown piece, a second, one that was stated,
 *   pieces that came before, a mould that is no working one of this design
 */
export async function stateEdition(
  doer: Doer,
  { requestKey, ...input }: StateEditionInput,
): Promise<Result<{ code: string }, StateEditionRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const key = { key: requestKey, name: 'stateEdition', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ code: string }, StateEditionRefusal>({ ...key, input }, async (tx) => {
    const { skuId, size, artistProofs, mouldId } = input;
    const sku = await loadPiece(tx, skuId);
    if (!sku) return refuse({ code: 'unknown_piece' });
    if (sku.grade !== 'first') return refuse({ code: 'second_is_no_edition' });
    if (sku.edition) return refuse({ code: 'stated_already', size: sku.edition.size });
    if (sku.movements.length > 0) return refuse({ code: 'pieces_came_before' });
    if (mouldId !== null && !(await givesDesign(tx, mouldId, sku.designId))) {
      return refuse({ code: 'mould_of_another_design' });
    }
    const { timeZone } = await getGallery(tx);
    const statedOn = dateFromDay(dayOf(doer.at, timeZone));
    await tx.sku.update({
      where: { id: skuId },
      data: { making: 'edition' },
      select: { id: true },
    });
    await tx.edition.create({ data: { skuId, size, artistProofs, mouldId, statedOn } });
    const facts = { code: sku.code, size, artistProofs };
    const did = 'stated an edition';
    await recordAudit(tx, doer, { did, subject: 'Sku', subjectId: skuId, facts });
    return ok({ code: sku.code });
  });
}

function loadPiece(tx: Tx, id: string) {
  return tx.sku.findUnique({
    where: { id },
    select: {
      ...{ code: true, grade: true, designId: true, edition: { select: { size: true } } },
      movements: { select: { id: true }, take: 1 },
    },
  });
}

async function givesDesign(tx: Tx, mouldId: string, designId: string): Promise<boolean> {
  const where = { id: mouldId };
  const mould = await tx.mould.findUnique({ where, select: { designId: true, kind: true } });
  return mould?.designId === designId && mould.kind === 'working';
}
