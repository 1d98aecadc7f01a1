import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { OwnedInput } from '../input/card';
import type { Group } from '../reads/group';
import { cardCommand, tellCard, type Carded } from './card-command';

type Of = { saleLineId: string | null; commissionId: string | null; title: string };

/**
 * Writes down where a piece of theirs hangs, or that they have one we did not sell.
 *
 * @returns the id of what was written; refuses as {@link cardCommand}, then a piece that is not
 *   theirs, an address that is not theirs, and one that was taken off the card
 */
export async function keepOwned(doer: Doer, input: OwnedInput): Carded {
  return cardCommand(doer, { name: 'keepOwned', input }, async (tx, group) => {
    const of = await pieceOf(tx, group, input);
    if (!of.ok) return of;
    const ids = { in: [...group.ids] };
    const { addressId, hangs, note } = input;
    if (addressId !== null) {
      const theirs = await tx.collectorAddress.count({
        where: { id: addressId, collectorId: ids },
      });
      if (theirs === 0) return refuse({ code: 'not_theirs' });
    }
    const data = { title: of.value.title, addressId, hangs, note };
    const by = { staffId: doer.actor.id, at: doer.at };
    const before = await keptOf(tx, input);
    if (before === null && input.ownedId !== null) return refuse({ code: 'not_on_the_card' });
    const id = before ?? newId();
    if (before === null) {
      const row = { id, collectorId: group.livingId, ...of.value };
      await tx.ownedPiece.create({ data: { ...row, ...data, ...by }, select: { id: true } });
    } else {
      const { count } = await tx.ownedPiece.updateMany({
        where: { id, collectorId: ids },
        data: { ...data, ...by },
      });
      if (count === 0) return refuse({ code: 'not_on_the_card' });
    }
    await tellCard(tx, doer, {
      collectorId: group.livingId,
      did: 'wrote down where a piece hangs',
    });
    return ok(id);
  });
}

/** The row that is there for this piece, so that one piece hangs in one place. */
async function keptOf(tx: Tx, input: OwnedInput): Promise<string | null> {
  const { ownedId, saleLineId, commissionId } = input;
  const of = saleLineId !== null ? { saleLineId } : commissionId !== null ? { commissionId } : null;
  if (of === null && ownedId === null) return null;
  const row = await tx.ownedPiece.findFirst({
    where: of ?? { id: ownedId ?? '' },
    select: { id: true },
  });
  return row?.id ?? null;
}

async function pieceOf(
  tx: Tx,
  { ids }: Group,
  { saleLineId, commissionId, title }: OwnedInput,
): Promise<Result<Of, { code: 'not_theirs' }>> {
  const collectorId = { in: [...ids] };
  if (saleLineId !== null) {
    const line = await tx.saleLine.findFirst({
      where: { id: saleLineId, kind: 'piece', sale: { collectorId } },
      select: { title: true },
    });
    if (!line) return refuse({ code: 'not_theirs' });
    return ok({ saleLineId, commissionId: null, title: line.title });
  }
  if (commissionId === null) return ok({ saleLineId, commissionId, title });
  const commission = await tx.commission.findFirst({
    where: { id: commissionId, collectorId, handOver: { isNot: null } },
    select: { title: true },
  });
  if (!commission) return refuse({ code: 'not_theirs' });
  return ok({ saleLineId: null, commissionId, title: commission.title });
}
