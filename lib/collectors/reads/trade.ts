import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import {
  certificateStanding,
  type Certificate,
  type CertificateStanding,
  type TradeTerms,
} from '../rules/trade';
import { idsOf } from './group';

/** The most certificates that are read of one collector. */
export const certificatesMost = 100;

/** What a designer gets, under any of their names, the kept one first; null for one without terms. */
export async function readTradeTerms(
  from: Prisma.TransactionClient,
  collectorId: string,
): Promise<TradeTerms | null> {
  const ids = await idsOf(from, collectorId);
  const rows = await from.tradeTerms.findMany({
    where: { collectorId: { in: [...ids] } },
    select: { collectorId: true, way: true, percent: true, sinceOn: true, note: true },
  });
  const found = rows.toSorted(
    (one, other) => ids.indexOf(one.collectorId) - ids.indexOf(other.collectorId),
  )[0];
  if (!found) return null;
  const { way, percent, sinceOn, note } = found;
  return { way, note, percent: percent.toString(), sinceOn: dayFromDate(sinceOn) };
}

/** How a collector's certificates stand for a state on a day, see {@link certificateStanding}. */
export async function readCertificateFor(
  from: Prisma.TransactionClient,
  { collectorId, state, on }: { collectorId: string; state: string; on: Day },
): Promise<CertificateStanding> {
  return certificateStanding(await readCertificates(from, collectorId), state, on);
}

/** A collector's certificates, the latest first. */
export async function readCertificates(
  from: Prisma.TransactionClient,
  collectorId: string,
): Promise<Certificate[]> {
  const rows = await from.resaleCertificate.findMany({
    where: { collectorId: { in: [...(await idsOf(from, collectorId))] } },
    select: {
      ...{ id: true, state: true, permitNumber: true, legalName: true },
      ...{ fromOn: true, untilOn: true, withdrawnAt: true },
    },
    orderBy: [{ fromOn: 'desc' }, { id: 'desc' }],
    take: certificatesMost,
  });
  return rows.map(({ fromOn, untilOn, withdrawnAt, ...row }) => ({
    ...row,
    fromOn: dayFromDate(fromOn),
    untilOn: untilOn && dayFromDate(untilOn),
    isWithdrawn: withdrawnAt !== null,
  }));
}
