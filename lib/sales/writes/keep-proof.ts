import 'server-only';
import { createHash } from 'node:crypto';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { keepFile, preparePicture, type PreparedPicture } from '@/lib/files/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { KeepProofInput } from '../input/proof';
import { checkProof, type ProofRefusal } from '../rules/proof';

type Slip = Omit<KeepProofInput, 'requestKey' | 'picture'>;

/**
 * Keeps the carrier's slip of a sale that was sent, or adds to it when it has arrived. A picture
 * that is there stays when none comes with it.
 *
 * @param picture the slip as it was photographed; its bytes
 * @returns the receipt's number; refuses, in this order: not allowed, what is no picture, a key
 *   used for something else, a number no receipt has, a sale that was not sent, and what
 *   {@link checkProof} refuses
 */
export async function keepProof(
  doer: Doer,
  input: Slip & { requestKey: string; bytes: Uint8Array | null },
): Promise<Result<{ number: number }, ProofRefusal>> {
  const allowed = allow(doer.actor, 'counter.sell');
  if (!allowed.ok) return allowed;
  const { requestKey: key, bytes, ...slip } = input;
  const picture = bytes && (await preparePicture(bytes));
  if (picture && !picture.ok) return picture;
  const sha256 = bytes && createHash('sha256').update(bytes).digest('hex');
  const command = { key, name: 'keepProof', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ number: number }, ProofRefusal>(
    { ...command, input: { ...slip, sha256 } },
    (tx) => keep(tx, doer, slip, picture ? picture.value : null),
  );
}

async function keep(
  tx: Tx,
  doer: Doer,
  slip: Slip,
  picture: PreparedPicture | null,
): Promise<Result<{ number: number }, ProofRefusal>> {
  const { saleNumber: number, carrier, sentOn, arrivedOn } = slip;
  const select = { id: true, delivery: true, soldOn: true };
  const sale = await tx.sale.findUnique({ where: { number }, select });
  if (!sale) return refuse({ code: 'unknown_sale' });
  if (sale.delivery === 'taken') return refuse({ code: 'not_sent' });
  const checked = checkProof(slip, dayFromDate(sale.soldOn));
  if (!checked.ok) return checked;

  const file = picture && (await keepFile(tx, { ...picture, at: doer.at }));
  const data = {
    ...{ carrier, number: slip.number, staffId: doer.actor.id, at: doer.at },
    ...{ sentOn: dateFromDay(sentOn), arrivedOn: arrivedOn && dateFromDay(arrivedOn) },
    ...(file ? { fileId: file.id } : {}),
  };
  const where = { saleId: sale.id };
  await tx.deliveryProof.upsert({ where, create: { ...where, ...data }, update: data });
  const facts = { receipt: number, carrier, number: slip.number, sentOn, arrivedOn };
  const did = 'kept the carrier’s slip';
  await recordAudit(tx, doer, { did, subject: 'Sale', subjectId: sale.id, facts });
  return ok({ number });
}

/** What a carrier's slip says of a sale that another area sent. */
export type ProofToNote = {
  saleId: string;
  carrier: string;
  number: string;
  sentOn: Day;
  arrivedOn: Day | null;
};

/**
 * Keeps what is known of a carrier's slip, without its picture; one that is there stays. Joins the
 * caller's transaction, asks nobody for leave.
 */
export async function noteProof(tx: Tx, doer: Doer, slip: ProofToNote): Promise<void> {
  const { saleId, carrier, number, sentOn, arrivedOn } = slip;
  const data = {
    ...{ carrier, number, staffId: doer.actor.id, at: doer.at },
    ...{ sentOn: dateFromDay(sentOn), arrivedOn: arrivedOn && dateFromDay(arrivedOn) },
  };
  const where = { saleId };
  await tx.deliveryProof.upsert({ where, create: { saleId, ...data }, update: data });
}
