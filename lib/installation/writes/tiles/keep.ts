import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { tellHistory } from '@/lib/commissions/writes/carry-out';
import type { KeepTileWallInput } from '@/lib/installation/input/tiles/wall';
import type { TileWallRefusal } from '@/lib/installation/rules/tiles/refusals';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { layTiles } from '@/lib/walls/rules/tiles/layout';

type Kept = { number: number };

/**
 * Keeps a wall with its tiles, as it was asked; it stays so, and what is changed is kept as
 * another.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown commission,
 *   then as {@link layTiles}
 */
export async function keepTileWall(
  doer: Doer,
  input: KeepTileWallInput,
): Promise<Result<Kept, NotAllowed | KeyRefusal | TileWallRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...wall } = input;
  const command = { key, name: 'keepTileWall', staffId: doer.actor.id, input: wall, at: doer.at };
  return onceOnly<Kept, TileWallRefusal>(command, (tx) => addTileWall(tx, doer, wall));
}

/** The step of {@link keepTileWall}: joins the caller's transaction, asks nobody for leave. */
export async function addTileWall(
  tx: Tx,
  doer: Doer,
  wall: Omit<KeepTileWallInput, 'requestKey'>,
): Promise<Result<Kept, TileWallRefusal>> {
  const { commissionId, title, asked } = wall;
  const commission =
    commissionId && (await tx.commission.findUnique({ where: { id: commissionId } }));
  if (commissionId && !commission) return refuse({ code: 'unknown_commission' });
  const laid = layTiles(asked);
  if (!laid.ok) return laid;
  const { id, number } = await tx.tileWall.create({
    data: { commissionId, title, asked, staffId: doer.actor.id, at: doer.at },
    select: { id: true, number: true },
  });
  const facts = { number, order: laid.value.order, sets: asked.sets.length };
  const did = 'laid out a wall of tiles';
  if (commissionId) await tellHistory(tx, doer, { commissionId, did, facts });
  else await recordAudit(tx, doer, { did, subject: 'TileWall', subjectId: id, facts });
  return ok({ number });
}
