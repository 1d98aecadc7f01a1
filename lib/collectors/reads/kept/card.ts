import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

/** What stands on somebody's card, of every entry that is theirs. */
export async function readCardKept(from: Prisma.TransactionClient, ids: readonly string[]) {
  const theirs = { collectorId: { in: [...ids] } };
  const orderBy = { id: 'asc' } as const;
  const [entries, people, addresses, consents, notes, owned, tradeTerms, certificates, merges] =
    await Promise.all([
      from.collector.findMany({ where: { id: { in: [...ids] } }, orderBy }),
      from.collectorPerson.findMany({ where: theirs, orderBy }),
      from.collectorAddress.findMany({ where: theirs, orderBy }),
      from.consent.findMany({ where: theirs, orderBy }),
      from.collectorNote.findMany({ where: theirs, orderBy }),
      from.ownedPiece.findMany({
        where: theirs,
        include: { address: { select: { label: true } } },
        orderBy,
      }),
      from.tradeTerms.findMany({ where: theirs }),
      from.resaleCertificate.findMany({ where: theirs, orderBy }),
      from.collectorMerge.findMany({
        where: { OR: [{ keptId: { in: [...ids] } }, { goneId: { in: [...ids] } }] },
        orderBy,
      }),
    ]);
  return {
    ...{ entries, people, addresses, consents, notes, owned, tradeTerms, certificates, merges },
    history: await from.auditLine.findMany({
      where: { subject: 'Collector', subjectId: { in: [...ids] } },
      select: { at: true, did: true, facts: true },
      orderBy,
    }),
  };
}
