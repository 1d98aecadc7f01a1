import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { linkWords } from '@/lib/commissions/rules/page/link';
import { db } from '@/lib/platform/db/client';

/** An address of the collector's page, without its secret. */
export type LinkShown = {
  id: string;
  forName: string;
  madeAt: Date;
  runsOutAt: Date;
  lastUsedAt: Date | null;
  state: 'open' | 'withdrawn' | 'run out';
};

/** A letter, and what became of it. */
export type MailShown = {
  id: string;
  toAddress: string;
  subject: string;
  words: string;
  by: string;
  at: Date;
  sentAt: Date | null;
  failure: string | null;
};

/** The addresses that were made of a commission's page, newest first. */
export async function listLinks(
  actor: Actor,
  commissionId: string,
  at: Date,
): Promise<LinkShown[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().collectorLink.findMany({
    where: { commissionId },
    omit: { tokenSha256: true, commissionId: true, madeById: true },
    orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
  });
  return rows.map(({ withdrawnAt, ...row }) => ({
    ...row,
    state: linkWords({ withdrawnAt, runsOutAt: row.runsOutAt }, at),
  }));
}

/** The letters about a commission, newest first. */
export async function listMails(actor: Actor, commissionId: string): Promise<MailShown[]> {
  assertAllowed(actor, 'commissions.see_money');
  const rows = await db().mailSent.findMany({
    where: { commissionId },
    omit: { commissionId: true, staffId: true },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  });
  const by = await namesOf(commissionId);
  return rows.map((row) => ({ ...row, by: by.get(row.id) ?? '' }));
}

async function namesOf(commissionId: string): Promise<Map<string, string>> {
  const rows = await db().mailSent.findMany({
    where: { commissionId },
    select: { id: true, staffId: true },
  });
  const staff = await db().staff.findMany({
    where: { id: { in: rows.map((row) => row.staffId) } },
    select: { id: true, name: true },
  });
  const names = new Map(staff.map(({ id, name }) => [id, name]));
  return new Map(rows.map(({ id, staffId }) => [id, names.get(staffId) ?? '']));
}

/** What was answered on the collector's page: what they did, under which name, and when. */
export type AnswerShown = { id: string; at: Date; name: string; did: string };

/** The answers that came through the addresses of a commission, newest first. */
export async function listAnswers(actor: Actor, commissionId: string): Promise<AnswerShown[]> {
  assertAllowed(actor, 'commissions.see');
  const links = await db().collectorLink.findMany({
    where: { commissionId },
    select: { id: true, forName: true },
  });
  const names = new Map(links.map(({ id, forName }) => [id, forName]));
  const lines = await db().auditLine.findMany({
    where: { linkId: { in: [...names.keys()] }, subject: 'Commission', subjectId: commissionId },
    select: { id: true, at: true, did: true, linkId: true },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: 20,
  });
  return lines.map(({ id, linkId, ...line }) => ({
    ...line,
    id: String(id),
    name: names.get(linkId ?? '') ?? '',
  }));
}
