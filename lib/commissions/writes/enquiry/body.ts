import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import type { KeepBodyInput } from '@/lib/commissions/input/enquiry/body';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { carryOut, type AnyRefusal } from '@/lib/commissions/writes/carry-out';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A clay body that was written down. */
export type KeptBody = { bodyId: string; name: string };

/** What is known of a clay body. */
export type BodyFields = Omit<KeepBodyInput, 'requestKey' | 'bodyId' | 'centsPerKg'> &
  Partial<Pick<KeepBodyInput, 'centsPerKg'>>;

/**
 * Writes a clay body down, or changes what is known of one.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an unknown body,
 *   another one of that name, a new name for one that shown colour tiles name: their yes is to it
 * @example a body with nothing but a name is one: its measures are "not known yet"
 */
export async function keepBody(
  doer: Doer,
  input: KeepBodyInput,
): Promise<Result<KeptBody, AnyRefusal>> {
  const { requestKey, bodyId, ...fields } = input;
  const command = {
    name: 'keepBody',
    permission: 'catalogue.keep',
    key: requestKey,
    input: { bodyId, fields },
  } as const;
  return carryOut(doer, command, (tx) => addBody(tx, doer, fields, bodyId));
}

/**
 * The step of {@link keepBody}: joins the caller's transaction, asks nobody for leave.
 *
 * @param bodyId null for a new one
 */
export async function addBody(
  tx: Tx,
  doer: Doer,
  fields: BodyFields,
  bodyId: string | null = null,
): Promise<Result<KeptBody, CommissionRefusal>> {
  const { name } = fields;
  const sameName = await tx.clayBody.findFirst({
    where: { name: { equals: name, mode: Prisma.QueryMode.insensitive } },
    select: { id: true },
  });
  const kept = bodyId === null ? null : await tx.clayBody.findUnique({ where: { id: bodyId } });
  if (bodyId !== null && !kept) return refuse({ code: 'unknown_body' });
  if (sameName && sameName.id !== bodyId) return refuse({ code: 'body_is_there', name });
  if (kept && kept.name !== name && (await isOnTiles(tx, kept.id))) {
    return refuse({ code: 'body_is_on_tiles', name: kept.name });
  }
  const select = { id: true };
  const { id } = kept
    ? await tx.clayBody.update({ where: { id: kept.id }, data: fields, select })
    : await tx.clayBody.create({ data: fields, select });
  const did = kept ? 'changed what is known of a clay body' : 'wrote down a clay body';
  const facts = factsOf(fields);
  await recordAudit(tx, doer, { did, subject: 'ClayBody', subjectId: id, facts });
  return ok({ bodyId: id, name });
}

function factsOf({ name, absorptionPercent, frostTested, centsPerKg = null }: BodyFields) {
  return { name, absorptionPercent, frostTested, centsPerKg };
}

async function isOnTiles(tx: Tx, bodyId: string): Promise<boolean> {
  return (await tx.colourTile.count({ where: { bodyId }, take: 1 })) > 0;
}
