import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { readAgreementPaper, type AgreementPaper } from './paper';

/** {@link readAgreementPaper} for those who work here and see money. */
export async function findAgreementPaper(
  actor: Actor,
  commissionId: string,
  on: Day,
): Promise<AgreementPaper | null> {
  assertAllowed(actor, 'commissions.see_money');
  return readAgreementPaper(db(), commissionId, on);
}

/** {@link readAgreementPaper} for the collector's own page: whoever opened the link may see it. */
export async function agreementPaperForCollector(
  commissionId: string,
  on: Day,
): Promise<AgreementPaper | null> {
  return readAgreementPaper(db(), commissionId, on);
}
