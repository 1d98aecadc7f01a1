import 'server-only';
import { isAtPage, staffIdOf, type AnyDoer } from '@/lib/access/rules';
import type { SignatureInput } from '@/lib/commissions/input/signature';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { keepFile } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { fileToKeep, readyPicture, type ReadyPicture } from '@/lib/files/ready';

/** A signature made ready outside the transaction: the drawing, where there is one, is a picture. */
export type ReadySignature = Omit<SignatureInput, 'drawing'> & { drawing: ReadyPicture | null };

/**
 * Makes a signature ready to be kept, before any transaction is opened.
 *
 * @returns refuses `drawing_not_kept` when it is to be drawn and nothing was, or cannot be read
 */
export async function readySignature(
  input: SignatureInput,
): Promise<Result<ReadySignature, CommissionRefusal>> {
  const { signedName, signedCapacity, signedAs, drawing } = input;
  const signed = { signedName, signedCapacity, signedAs };
  if (signedAs !== 'drawn') return ok({ ...signed, drawing: null });
  const bytes = Uint8Array.from(Buffer.from(drawing.slice(drawing.indexOf(',') + 1), 'base64'));
  const picture = await readyPicture(new Blob([bytes]));
  return picture.ok
    ? ok({ ...signed, drawing: picture.value })
    : refuse({ code: 'drawing_not_kept' });
}

/** What is signed: the hash of the exact bytes, and what was ticked or said with it. */
export type SignedContent = {
  commissionId: string;
  contentSha256: string;
  statement: string;
  /** What their browser says it is; empty for a paper. */
  device: string;
};

/**
 * Keeps a name under exactly those bytes; joins the caller's transaction.
 *
 * @returns the id of the signature
 */
export async function addSignature(
  tx: Tx,
  doer: AnyDoer,
  signature: ReadySignature,
  signed: SignedContent,
): Promise<string> {
  const { signedName: name, signedCapacity: capacity, signedAs: kind, drawing } = signature;
  const file = drawing && (await keepFile(tx, fileToKeep(drawing, doer.at)));
  const { id } = await tx.signature.create({
    data: {
      ...{ ...signed, name, capacity, kind, at: doer.at },
      fileId: file?.id ?? null,
      linkId: isAtPage(doer) ? doer.page.linkId : null,
      recordedById: staffIdOf(doer),
    },
    select: { id: true },
  });
  return id;
}
