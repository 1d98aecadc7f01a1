import 'server-only';
import { createHash } from 'node:crypto';
import { allow, type Doer, type Permission } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay } from '@/lib/dates/rules';
import { keepFile, preparePicture, type PreparedPicture } from '@/lib/files/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { CertificateInput, TradeTermsInput, WithdrawInput } from '../input/trade';
import { livingId, readGroup } from '../reads/group';
import { readCertificates, readTradeTerms } from '../reads/trade';
import { overlapping } from '../rules/trade';
import type { TradeRefusal } from '../rules/trade-refusals';

type Kept = Promise<Result<string, TradeRefusal>>;

/**
 * Puts a resale certificate on file, with its picture when there is one.
 *
 * @returns the certificate's id; refuses, in this order: not allowed, a picture that cannot be kept,
 *   a key used for something else, a collector nobody knows, the same permit on file for some of
 *   the days
 */
export async function keepCertificate(doer: Doer, input: CertificateInput): Kept {
  const may = allow(doer.actor, 'collectors.write');
  if (!may.ok) return may;
  const { picture, requestKey, ...asked } = input;
  const ready = picture ? await preparePicture(new Uint8Array(await picture.arrayBuffer())) : null;
  if (ready && !ready.ok) return refuse({ code: 'picture_not_kept', picture: ready.refusal });
  const scan = ready?.value ?? null;
  const sha256 = scan && createHash('sha256').update(scan.bytes).digest('hex');
  const command = { requestKey, name: 'keepCertificate', asked: { ...asked, sha256 } };
  return tradeCommand(doer, 'collectors.write', command, (tx) =>
    fileCertificate(tx, doer, { asked, scan }),
  );
}

type Filed = {
  asked: Omit<CertificateInput, 'picture' | 'requestKey'>;
  scan: PreparedPicture | null;
};

async function fileCertificate(tx: Tx, doer: Doer, { asked, scan }: Filed): Kept {
  const { state, permitNumber, fromOn, untilOn } = asked;
  const collectorId = await livingId(tx, asked.collectorId);
  if (!collectorId) return refuse({ code: 'unknown_collector' });
  const same = overlapping(await readCertificates(tx, collectorId), asked);
  if (same) return refuse({ code: 'certificate_is_there', permitNumber, state: same.state });
  const file = scan && (await keepFile(tx, { ...scan, at: doer.at }));
  const id = newId();
  await tx.resaleCertificate.create({
    data: {
      ...{
        ...asked,
        collectorId,
        id,
        staffId: doer.actor.id,
        at: doer.at,
        fileId: file?.id ?? null,
      },
      fromOn: dateFromDay(fromOn),
      untilOn: untilOn && dateFromDay(untilOn),
    },
    select: { id: true },
  });
  await recordAudit(tx, doer, {
    ...{ did: 'put a resale certificate on file', subject: 'Collector', subjectId: collectorId },
    facts: { state, permitNumber, fromOn, untilOn, withPicture: file !== null },
  });
  return ok(id);
}

/**
 * Withdraws a resale certificate: from now on it exempts nothing. What was sold under it stays.
 *
 * @returns the collector's id; refuses, in this order: not allowed, a key used for something else, a
 *   certificate that is not there or was withdrawn
 */
export async function withdrawCertificate(doer: Doer, input: WithdrawInput): Kept {
  const { requestKey, certificateId } = input;
  const command = { requestKey, name: 'withdrawCertificate', asked: { certificateId } };
  return tradeCommand(doer, 'collectors.write', command, async (tx) => {
    const kept = await tx.resaleCertificate.findUnique({
      where: { id: certificateId, withdrawnAt: null },
      select: { collectorId: true, state: true, permitNumber: true },
    });
    if (!kept) return refuse({ code: 'certificate_unknown' });
    await tx.resaleCertificate.update({
      where: { id: certificateId },
      data: { withdrawnAt: doer.at },
      select: { id: true },
    });
    const { collectorId, ...facts } = kept;
    const did = 'withdrew a resale certificate';
    await recordAudit(tx, doer, { did, subject: 'Collector', subjectId: collectorId, facts });
    return ok(collectorId);
  });
}

/**
 * Sets what a designer gets: something off the price, or a fee for who they bring, or nothing.
 * Sales made before keep what they were made with.
 *
 * @returns the collector's id; refuses, in this order: not allowed, a key used for something else, a
 *   collector nobody knows
 */
export async function setTradeTerms(doer: Doer, input: TradeTermsInput): Kept {
  const { requestKey, ...asked } = input;
  const command = { requestKey, name: 'setTradeTerms', asked };
  return tradeCommand(doer, 'trade.keep', command, async (tx) => {
    const { way, percent, sinceOn, note } = asked;
    const group = await readGroup(tx, asked.collectorId);
    if (!group || group.erasedAt !== null) return refuse({ code: 'unknown_collector' });
    const { livingId: collectorId, ids } = group;
    const before = await readTradeTerms(tx, collectorId);
    if (way === 'nothing' || percent === null) {
      await tx.tradeTerms.deleteMany({ where: { collectorId: { in: [...ids] } } });
    } else {
      const data = { way, percent, sinceOn: dateFromDay(sinceOn), note };
      await tx.tradeTerms.upsert({
        where: { collectorId },
        create: { collectorId, ...data },
        update: data,
        select: { collectorId: true },
      });
    }
    await recordAudit(tx, doer, {
      ...{ did: 'set what a designer gets', subject: 'Collector', subjectId: collectorId },
      facts: { way, percent, sinceOn, before: before && `${before.way} ${before.percent}` },
    });
    return ok(collectorId);
  });
}

type Asked = { requestKey: string; name: string; asked: Record<string, unknown> };

async function tradeCommand(
  doer: Doer,
  permission: Permission,
  { requestKey: key, name, asked }: Asked,
  work: (tx: Tx) => Kept,
): Kept {
  const may = allow(doer.actor, permission);
  if (!may.ok) return may;
  const command = { key, name, staffId: doer.actor.id, input: asked, at: doer.at };
  return onceOnly<string, TradeRefusal>(command, work);
}
