import 'server-only';
import { createHash } from 'node:crypto';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { keepFile, preparePicture } from '@/lib/files/writes';
import { onceOnly } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { HangPictureRefusal } from '../rules/picture';

/**
 * Hangs a picture on a piece. A design without a picture of its own takes it too.
 *
 * @returns the code of the piece; refuses, in this order: not allowed, what is no picture, an
 *   unknown piece
 */
export async function hangPicture(
  doer: Doer,
  input: { requestKey: string; skuId: string; bytes: Uint8Array },
): Promise<Result<{ code: string }, HangPictureRefusal>> {
  const allowed = allow(doer.actor, 'stock.load');
  if (!allowed.ok) return allowed;
  const picture = await preparePicture(input.bytes);
  if (!picture.ok) return picture;

  const { skuId, requestKey: key } = input;
  const sha256 = createHash('sha256').update(input.bytes).digest('hex');
  const command = { key, name: 'hangPicture', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ code: string }, HangPictureRefusal>(
    { ...command, input: { skuId, sha256 } },
    async (tx) => {
      const select = { code: true, designId: true };
      const sku = await tx.sku.findUnique({ where: { id: skuId }, select });
      if (!sku) return refuse({ code: 'unknown_piece' });
      const { id: pictureId } = await keepFile(tx, { ...picture.value, at: doer.at });
      await tx.sku.update({ where: { id: skuId }, data: { pictureId } });
      const bare = { id: sku.designId, pictureId: null };
      await tx.design.updateMany({ where: bare, data: { pictureId } });
      const facts = { code: sku.code, pictureId };
      const did = 'hung a picture';
      await recordAudit(tx, doer, { did, subject: 'Sku', subjectId: skuId, facts });
      return ok({ code: sku.code });
    },
  );
}
