import 'server-only';
import { isAtPage, staffIdOf, type AnyDoer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';

/** A fact of an audit line. Cents may be given as they are; they are kept as decimal text. */
export type Fact = string | number | bigint | boolean | null | readonly Fact[];

/** One thing that happened, in the words of the trade. */
export type AuditEntry = {
  /** What was done, so that it reads on after a name: "sold at the counter". */
  did: string;
  /** The model's name and the row's id. */
  subject: string;
  subjectId: string;
  facts: Readonly<Record<string, Fact>>;
};

/** Writes down who did what; joins the caller's transaction. Never changed or deleted after. */
export async function recordAudit(tx: Tx, doer: AnyDoer, entry: AuditEntry): Promise<void> {
  await recordAudits(tx, [{ doer, ...entry }]);
}

/** Writes down many things that happened in one statement; joins the caller's transaction. */
export async function recordAudits(
  tx: Tx,
  entries: readonly (AuditEntry & { doer: AnyDoer })[],
): Promise<void> {
  await tx.auditLine.createMany({
    data: entries.map(({ doer, did, subject, subjectId, facts }) => ({
      at: doer.at,
      staffId: staffIdOf(doer),
      linkId: isAtPage(doer) ? doer.page.linkId : null,
      did,
      subject,
      subjectId,
      facts: Object.fromEntries(Object.entries(facts).map(([name, fact]) => [name, plain(fact)])),
    })),
  });
}

type Plain = string | number | boolean | null | Plain[];

function plain(fact: Fact): Plain {
  if (typeof fact === 'bigint') return fact.toString();
  return isList(fact) ? fact.map(plain) : fact;
}

function isList(fact: Fact): fact is readonly Fact[] {
  return Array.isArray(fact);
}
