import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { AddPieceInput, EndColourwayInput, PieceFactsInput } from '../input/pieces';
import type { CatalogueSku } from '../rules/piece';
import type { PieceRefusal } from '../rules/pieces';
import { keepSkus } from '../writes';

type Told = { code: string };

/**
 * Writes a new piece down by hand; a design or colourway that is not known yet is made with it.
 *
 * @returns refuses, in this order: not allowed, a SKU that a piece or a set has, a barcode that
 *   another piece has
 */
export async function addPiece(
  doer: Doer,
  { requestKey, ...piece }: AddPieceInput,
): Promise<Result<Told, PieceRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'addPiece', requestKey, piece);
  return onceOnly<Told, PieceRefusal>(command, async (tx) => {
    const added = await addPieceStep(tx, doer, piece);
    return added.ok ? ok({ code: piece.code }) : added;
  });
}

/** The step of {@link addPiece}: joins the caller's transaction, asks nobody for leave. */
export async function addPieceStep(
  tx: Tx,
  doer: Doer,
  piece: CatalogueSku,
): Promise<Result<{ skuId: string }, PieceRefusal>> {
  const { code, gtin, title, priceCents } = piece;
  const where = { OR: [{ code }, ...(gtin === null ? [] : [{ gtin }])] };
  const select = { code: true };
  const taken = await tx.sku.findMany({ where, select, orderBy: { code: 'asc' }, take: 2 });
  const set = await tx.pieceSet.findUnique({ where: { code }, select });
  if (set || taken.some((each) => each.code === code)) {
    return refuse({ code: 'sku_taken', sku: code });
  }
  const [other] = taken;
  if (other) return refuse({ code: 'gtin_taken', sku: other.code });
  const skuId = (await keepSkus(tx, doer, [piece])).get(code);
  invariant(skuId, 'A piece that was kept has its id.');
  const facts = { code, title, priceCents };
  const did = 'wrote a piece down';
  await recordAudit(tx, doer, { did, subject: 'Sku', subjectId: skuId, facts });
  return ok({ skuId });
}

/**
 * Changes what the label of a piece says: year, medium, food use, and the flaw of a second.
 *
 * @returns refuses, in this order: not allowed, an unknown piece, a second without its flaw
 */
export async function changePieceFacts(
  doer: Doer,
  { requestKey, ...input }: PieceFactsInput,
): Promise<Result<Told, PieceRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'changePieceFacts', requestKey, input);
  return onceOnly<Told, PieceRefusal>(command, async (tx) => {
    const { skuId, flaw, ...label } = input;
    const select = { code: true, grade: true };
    const sku = await tx.sku.findUnique({ where: { id: skuId }, select });
    if (!sku) return refuse({ code: 'unknown_piece' });
    const isSecond = sku.grade !== 'first';
    if (isSecond && flaw === '') return refuse({ code: 'flaw_needed' });
    const facts = { ...label, ...(isSecond ? { flaw } : {}) };
    await tx.sku.update({ where: { id: skuId }, data: facts, select: { id: true } });
    const did = 'changed what a label says';
    await recordAudit(tx, doer, { did, subject: 'Sku', subjectId: skuId, facts });
    return ok({ code: sku.code });
  });
}

/**
 * Says since when the glazes of a colourway are no longer made; or, without a day, that they are.
 *
 * @returns the colourway's name; refuses, in this order: not allowed, an unknown colourway
 */
export async function endColourway(
  doer: Doer,
  { requestKey, ...input }: EndColourwayInput,
): Promise<Result<{ name: string }, PieceRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'endColourway', requestKey, input);
  return onceOnly<{ name: string }, PieceRefusal>(command, async (tx) => {
    const { colourwayId: id, endedOn } = input;
    const kept = await tx.colourway.findUnique({ where: { id }, select: { name: true } });
    if (!kept) return refuse({ code: 'unknown_colourway' });
    const data = { endedOn: endedOn && dateFromDay(endedOn) };
    await tx.colourway.update({ where: { id }, data, select: { id: true } });
    const facts = { name: kept.name, endedOn };
    const did = endedOn === null ? 'took up a colourway again' : 'ended a colourway';
    await recordAudit(tx, doer, { did, subject: 'Colourway', subjectId: id, facts });
    return ok(kept);
  });
}

function commandOf(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}
