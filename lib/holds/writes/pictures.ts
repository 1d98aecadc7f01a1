import 'server-only';
import { createHash } from 'node:crypto';
import { keepFile, preparePicture, type PreparedPicture } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { ApprovalRefusal } from '../rules/approval';

/** A picture made ready outside the transaction, with the hash that stands for it in a command. */
export type ReadyPicture = PreparedPicture & { sha256: string };

/**
 * Makes pictures of a piece's condition ready to be kept, before any transaction is opened.
 *
 * @returns in the order given; refuses with the first that cannot be kept
 */
export async function readyPictures(
  chosen: readonly Blob[],
): Promise<Result<ReadyPicture[], ApprovalRefusal>> {
  const ready: ReadyPicture[] = [];
  for (const picture of chosen) {
    const prepared = await preparePicture(new Uint8Array(await picture.arrayBuffer()));
    if (!prepared.ok) return refuse({ code: 'picture_not_kept', picture: prepared.refusal });
    const sha256 = createHash('sha256').update(prepared.value.bytes).digest('hex');
    ready.push({ ...prepared.value, sha256 });
  }
  return ok(ready);
}

/** Keeps pictures with a slip: of the piece as it left, or as it came back. */
export async function keepPictures(
  tx: Tx,
  pictures: readonly ReadyPicture[],
  { approvalId, isBack, at }: { approvalId: string; isBack: boolean; at: Date },
): Promise<void> {
  for (const { bytes, mediaType, widthPx, heightPx } of pictures) {
    const file = await keepFile(tx, { bytes, mediaType, widthPx, heightPx, at });
    const data = { approvalId, fileId: file.id, isBack, at };
    await tx.onApprovalPicture.create({ data, select: { id: true } });
  }
}
