import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { EndSetInput, KeepSetInput } from '../input/sets';
import { findTypedPieces } from '../reads/typed-pieces';
import type { SetRefusal } from '../rules/sets';

/**
 * Writes down pieces that belong together, or changes the set whose id it carries.
 *
 * @returns refuses, in this order: not allowed, an unknown set, a code that is a piece's or
 *   another set's, a piece that nobody knows, a second, fewer than two pieces
 */
export async function keepSet(
  doer: Doer,
  { requestKey, ...input }: KeepSetInput,
): Promise<Result<{ code: string }, SetRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const key = { key: requestKey, name: 'keepSet', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ code: string }, SetRefusal>({ ...key, input }, async (tx) => {
    const refusal = await refusalOfCode(tx, input);
    if (refusal) return refuse(refusal);
    const members = await readMembers(tx, input);
    if (!members.ok) return members;

    const { setId, code, title, priceCents, maySplit, note } = input;
    const id = setId ?? newId();
    const facts = { code, title, priceCents, maySplit, note };
    if (setId === null) {
      await tx.pieceSet.create({ data: { id, ...facts, createdAt: doer.at } });
    } else {
      await tx.pieceSet.update({ where: { id }, data: facts, select: { id: true } });
      await tx.pieceSetMember.deleteMany({ where: { setId: id } });
    }
    await tx.pieceSetMember.createMany({
      data: members.value.map((each) => ({ ...each, setId: id })),
    });
    const did = setId === null ? 'put a set together' : 'changed a set';
    await recordAudit(tx, doer, { did, subject: 'PieceSet', subjectId: id, facts });
    return ok({ code });
  });
}

async function refusalOfCode(
  tx: Tx,
  { setId, code }: Pick<KeepSetInput, 'setId' | 'code'>,
): Promise<SetRefusal | null> {
  if (setId !== null) {
    const kept = await tx.pieceSet.findUnique({
      where: { id: setId, endedAt: null },
      select: { id: true },
    });
    if (!kept) return { code: 'unknown_set' };
  }
  const piece = await tx.sku.findUnique({ where: { code }, select: { id: true } });
  if (piece) return { code: 'code_of_a_piece', taken: code };
  const set = await tx.pieceSet.findUnique({ where: { code }, select: { id: true } });
  return set && set.id !== setId ? { code: 'code_of_a_set', taken: code } : null;
}

async function readMembers(
  tx: Tx,
  { members }: Pick<KeepSetInput, 'members'>,
): Promise<Result<{ skuId: string; quantity: number }[], SetRefusal>> {
  const found = await findTypedPieces(tx, members);
  if (!found.ok) return found;
  const counts = new Map<string, number>();
  for (const { skuId, quantity } of found.value) {
    counts.set(skuId, (counts.get(skuId) ?? 0) + quantity);
  }
  const second = await tx.sku.findFirst({
    where: { id: { in: [...counts.keys()] }, grade: { not: 'first' } },
    select: { code: true },
    orderBy: { code: 'asc' },
  });
  if (second) return refuse({ code: 'second_in_a_set', sku: second.code });
  const pieces = [...counts].map(([skuId, quantity]) => ({ skuId, quantity }));
  const inAll = pieces.reduce((sum, each) => sum + each.quantity, 0);
  return inAll < 2 ? refuse({ code: 'too_few_pieces' }) : ok(pieces);
}

/**
 * No longer offers a set; what was sold of it stays as it was.
 *
 * @returns refuses, in this order: not allowed, an unknown set or one that has ended
 */
export async function endSet(
  doer: Doer,
  { requestKey, setId }: EndSetInput,
): Promise<Result<{ code: string }, SetRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const key = { key: requestKey, name: 'endSet', staffId: doer.actor.id, at: doer.at };
  const command = { ...key, input: { setId } };
  return onceOnly<{ code: string }, SetRefusal>(command, async (tx) => {
    const where = { id: setId, endedAt: null };
    const kept = await tx.pieceSet.findUnique({ where, select: { code: true } });
    if (!kept) return refuse({ code: 'unknown_set' });
    await tx.pieceSet.update({
      where: { id: setId },
      data: { endedAt: doer.at },
      select: { id: true },
    });
    const facts = { code: kept.code };
    const did = 'ended a set';
    await recordAudit(tx, doer, { did, subject: 'PieceSet', subjectId: setId, facts });
    return ok(kept);
  });
}
