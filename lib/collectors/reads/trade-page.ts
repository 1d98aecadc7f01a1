import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import type { Certificate, TradeTerms } from '../rules/trade';
import { readGroup } from './group';
import { certificatesMost, readCertificates, readTradeTerms } from './trade';

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
  const group = await readGroup(db(), collectorId);
  if (!group) return null;
  const select = { where: { id: group.livingId }, select: { name: true } };
  const [collector, terms, certificates, more, home] = await Promise.all([
    db().collector.findUnique(select),
    readTradeTerms(db(), collectorId),
    readCertificates(db(), collectorId),
    db().resaleCertificate.findMany({
      where: { collectorId: { in: [...group.ids] } },
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
