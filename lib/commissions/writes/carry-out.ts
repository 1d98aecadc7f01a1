import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import {
  allow,
  isAtPage,
  staffIdOf,
  type AnyDoer,
  type NotAllowed,
  type Permission,
} from '@/lib/access/rules';
import { recordAudit, type Fact } from '@/lib/audit/writes';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { dayOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { linkStillOpen } from './page/still-open';
import { getGallery, type Gallery } from '@/lib/platform/settings';

/** What every command about a commission may be refused with. */
export type AnyRefusal = CommissionRefusal | NotAllowed | KeyRefusal;

/**
 * A command: its name, the permission it takes, its key and what its key stands for.
 *
 * `onTheirPage` names the commission for which a collector may do it on their own page; without it
 * none may.
 */
export type CommissionCommand = {
  name: string;
  permission: Permission;
  key: string;
  input: unknown;
  onTheirPage?: { commissionId: string };
};

/**
 * Runs one command about a commission: asks whether the doer may, then does it once, in one
 * transaction. An area above may refuse for reasons of its own, `No`.
 */
export async function carryOut<Answer extends Prisma.InputJsonValue, No = never>(
  doer: AnyDoer,
  command: CommissionCommand,
  work: (tx: Tx) => Promise<Result<Answer, CommissionRefusal | No>>,
): Promise<Result<Answer, AnyRefusal | No>> {
  const allowed = mayDo(doer, command);
  if (!allowed.ok) return allowed;
  const { name, key, input } = command;
  return onceOnly<Answer, CommissionRefusal | No>(
    { key, name, staffId: staffIdOf(doer), input, at: doer.at },
    async (tx) => {
      // Asked again inside: the link may have been withdrawn while the page was open.
      const open = isAtPage(doer) ? await linkStillOpen(tx, doer) : ok(true);
      return open.ok ? work(tx) : open;
    },
  );
}

function mayDo(doer: AnyDoer, command: CommissionCommand): Result<true, AnyRefusal> {
  if (!isAtPage(doer)) return allow(doer.actor, command.permission);
  if (!command.onTheirPage) return refuse({ code: 'not_allowed', permission: command.permission });
  const isTheirs = command.onTheirPage.commissionId === doer.page.commissionId;
  return isTheirs ? ok(true) : refuse({ code: 'unknown_commission' });
}

/** A commission as a command finds it. */
export type FoundCommission = {
  id: string;
  number: number;
  title: string;
  /** The entry that is kept, when theirs was found to be the same as another. */
  collectorId: string;
  taxPlaceId: string | null;
  agreementVersion: number;
  facts: CommissionFacts;
  gallery: Gallery;
  /** The day of the command, in the gallery's own zone. */
  today: Day;
};

/**
 * Finds a commission inside a transaction.
 *
 * @returns refuses `unknown_commission`
 */
export async function findForWriting(
  tx: Tx,
  doer: AnyDoer,
  commissionId: string,
): Promise<Result<FoundCommission, CommissionRefusal>> {
  const gallery = await getGallery(tx);
  const row = await tx.commission.findUnique({
    where: { id: commissionId },
    select: {
      ...factsSelect,
      id: true,
      number: true,
      title: true,
      collectorId: true,
      collector: { select: { mergedIntoId: true } },
      agreements: {
        select: { ...factsSelect.agreements.select, version: true, taxPlaceId: true },
        orderBy: { version: 'desc' },
        take: 1,
      },
    },
  });
  if (!row) return refuse({ code: 'unknown_commission' });
  const { id, number, title } = row;
  const collectorId = row.collector.mergedIntoId ?? row.collectorId;
  return ok({
    ...{ id, number, title, collectorId, gallery },
    taxPlaceId: row.agreements[0]?.taxPlaceId ?? null,
    agreementVersion: row.agreements[0]?.version ?? 0,
    facts: factsOf(row, gallery.timeZone),
    today: dayOf(doer.at, gallery.timeZone),
  });
}

/**
 * Finds a commission that is still going on.
 *
 * @returns refuses, in this order: unknown, ended early, handed over
 */
export async function findOpen(
  tx: Tx,
  doer: AnyDoer,
  commissionId: string,
): Promise<Result<FoundCommission, CommissionRefusal>> {
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const { ending, handOver } = found.value.facts;
  if (ending) return refuse({ code: 'ended_early', endedOn: ending.endedOn });
  if (handOver) return refuse({ code: 'handed_over_already', handedOn: handOver.handedOn });
  return found;
}

/** Writes one line of a commission's history; joins the caller's transaction. */
export async function tellHistory(
  tx: Tx,
  doer: AnyDoer,
  line: { commissionId: string; did: string; facts: Readonly<Record<string, Fact>> },
): Promise<void> {
  const { commissionId, did, facts } = line;
  await recordAudit(tx, doer, { did, subject: 'Commission', subjectId: commissionId, facts });
}
