import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';

/** Where a letter to the collector goes, and whether they want any; the last word counts. */
export type MailTo = { address: string; wantsLetters: boolean };

/** The mail address of a commission's collector; empty where none is known. */
export async function readMailTo(actor: Actor, commissionId: string): Promise<MailTo> {
  assertAllowed(actor, 'collectors.see');
  const { collector } = await db().commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: {
      collector: {
        select: {
          email: true,
          consents: {
            where: { to: 'email' },
            orderBy: [{ at: 'desc' }, { id: 'desc' }],
            select: { given: true },
            take: 1,
          },
        },
      },
    },
  });
  return {
    address: collector.email ?? '',
    wantsLetters: collector.consents[0]?.given ?? true,
  };
}
