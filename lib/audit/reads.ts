import 'server-only';
import { db } from '@/lib/platform/db/client';

const linesMost = 200;

/** One thing that happened, with the name of who did it. */
export type AuditSummary = {
  /** A decimal text. */
  id: string;
  at: Date;
  /** Null for what the gallery did by itself. */
  who: string | null;
  did: string;
  subject: string;
  subjectId: string;
  facts: unknown;
};

/** The rows that a history is about: a model's name and ids. */
export type AuditSubject = { subject: string; subjectIds: readonly string[] };

/**
 * What happened to these rows, the latest first, at most 200 lines. The caller has asked whether
 * the person may see them: the audit itself knows no permission.
 */
export async function listAuditUnscoped(
  subjects: readonly AuditSubject[],
): Promise<AuditSummary[]> {
  const rows = await db().auditLine.findMany({
    where: {
      OR: subjects.map(({ subject, subjectIds }) => ({
        subject,
        subjectId: { in: [...subjectIds] },
      })),
    },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: linesMost,
  });
  const staffIds = [...new Set(rows.flatMap((row) => row.staffId ?? []))];
  const staff = await db().staff.findMany({
    where: { id: { in: staffIds } },
    select: { id: true, name: true },
  });
  const names = new Map(staff.map(({ id, name }) => [id, name]));
  return rows.map(({ id, staffId, ...row }) => ({
    ...row,
    id: id.toString(),
    who: staffId ? (names.get(staffId) ?? null) : null,
  }));
}
