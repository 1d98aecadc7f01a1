import 'server-only';
import { fileToKeep, type ReadyPicture } from '@/lib/files/ready';
import { keepFile } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';

/** Keeps pictures with a slip: of the piece as it left, or as it came back. */
export async function keepPictures(
  tx: Tx,
  pictures: readonly ReadyPicture[],
  { approvalId, isBack, at }: { approvalId: string; isBack: boolean; at: Date },
): Promise<void> {
  for (const picture of pictures) {
    const file = await keepFile(tx, fileToKeep(picture, at));
    const data = { approvalId, fileId: file.id, isBack, at };
    await tx.onApprovalPicture.create({ data, select: { id: true } });
  }
}
