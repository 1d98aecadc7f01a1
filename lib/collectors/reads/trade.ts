import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import {
  certificateStanding,
  type Certificate,
  type CertificateStanding,
  type TradeTerms,
} from '../rules/trade';

const certificatesMost = 100;

/** What a designer gets; null for somebody who has no terms. */
export async function readTradeTerms(
  from: Prisma.TransactionClient,
  collectorId: string,
): Promise<TradeTerms | null> {
  const row = await from.tradeTerms.findUnique({
    where: { collectorId },
    select: { way: true, percent: true, sinceOn: true, note: true },
  });
  return row && { ...row, percent: row.percent.toString(), sinceOn: dayFromDate(row.sinceOn) };
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
    where: { collectorId },
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

/** A certificate as its page shows it. */
export type CertificateShown = Certificate & {
  buys: string;
  /** The address of its picture, when there is one. */
  pictureHref: string | null;
};

/** A designer's page of trade; `terms` null for somebody who has none. */
export type TradePage = {
  name: string;
  homeState: string;
  terms: TradeTerms | null;
  certificates: CertificateShown[];
};

/**
 * What a collector has to do with the trade: certificates and terms.
 *
 * @returns null when nobody has that id
 */
export async function getTradePage(actor: Actor, collectorId: string): Promise<TradePage | null> {
  assertAllowed(actor, 'tax.see');
  if (!z.uuid().safeParse(collectorId).success) return null;
  const select = { where: { id: collectorId }, select: { name: true } };
  const [collector, terms, certificates, more, home] = await Promise.all([
    db().collector.findUnique(select),
    readTradeTerms(db(), collectorId),
    readCertificates(db(), collectorId),
    db().resaleCertificate.findMany({
      where: { collectorId },
      select: { id: true, buys: true, fileId: true },
      take: certificatesMost,
    }),
    db().gallery.findUnique({
      where: { id: 1 },
      select: { taxPlace: { select: { state: true } } },
    }),
  ]);
  if (!collector) return null;
  const details = new Map(more.map((each) => [each.id, each]));
  return {
    name: collector.name,
    homeState: home?.taxPlace.state ?? '',
    terms,
    certificates: certificates.map((each) => {
      const fileId = details.get(each.id)?.fileId ?? null;
      const buys = details.get(each.id)?.buys ?? '';
      return { ...each, buys, pictureHref: fileId && `/files/${fileId}` };
    }),
  };
}
