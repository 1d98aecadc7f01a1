import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import { allow, type Actor } from '@/lib/access/rules';
import {
  historySentence,
  withoutNames,
  type HistoryFact,
} from '@/lib/commissions/rules/course/history';
import type { Telling } from '@/lib/commissions/rules/course/sentences';
import type { ApprovalWay } from '@/lib/commissions/rules/words';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { fileColumns, shownPicture, type CommissionPictureShown } from './picture';

/** A yes as the sheet tells it. */
export type YesTold = { approvedBy: string; how: ApprovalWay; approvedOn: Day; writtenBy: string };

/** A sketch or a colour tile as the sheet shows it. */
export type ShownTold = {
  id: string;
  what: 'sketch' | 'colour_tile';
  label: string;
  /** The note of a sketch; the glazes of a colour tile. */
  words: string;
  shownOn: Day;
  /** Lower-case hexadecimal; a yes binds to it. */
  fileSha256: string;
  picture: CommissionPictureShown;
  yes: YesTold | null;
};

const approvalSelect = {
  select: { approvedBy: true, how: true, approvedOn: true, recordedById: true },
  orderBy: [{ at: 'asc' }, { id: 'asc' }],
  take: 1,
} as const satisfies Prisma.Sketch$approvalsArgs;

const shownColumns = {
  id: true,
  shownOn: true,
  fileSha256: true,
  file: { select: fileColumns },
  approvals: approvalSelect,
} as const;

/** All sketches of a commission, then all its colour tiles, each in the order they were shown. */
export async function listShown(actor: Actor, commissionId: string): Promise<ShownTold[]> {
  assertAllowed(actor, 'commissions.see');
  const sketches = await db().sketch.findMany({
    where: { commissionId },
    select: { ...shownColumns, letter: true, note: true },
    orderBy: [{ at: 'asc' }, { letter: 'asc' }],
  });
  const tiles = await db().colourTile.findMany({
    where: { commissionId },
    select: { ...shownColumns, number: true, glazes: true },
    orderBy: { number: 'asc' },
  });
  const writers = [...sketches, ...tiles].flatMap((row) =>
    row.approvals.flatMap((yes) => yes.recordedById ?? []),
  );
  const names = await namesOf(writers);
  return [
    ...sketches.map((row) =>
      shownOf({ ...row, what: 'sketch', label: row.letter, words: row.note }, names),
    ),
    ...tiles.map((row) =>
      shownOf({ ...row, what: 'colour_tile', label: String(row.number), words: row.glazes }, names),
    ),
  ];
}

type ShownRow = Prisma.SketchGetPayload<{ select: typeof shownColumns }> &
  Pick<ShownTold, 'what' | 'label' | 'words'>;

function shownOf(row: ShownRow, names: ReadonlyMap<string, string>): ShownTold {
  const { id, what, label, words, fileSha256 } = row;
  const yes = row.approvals[0];
  const name = what === 'sketch' ? 'Sketch' : 'Colour tile';
  return {
    ...{ id, what, label, words, fileSha256 },
    shownOn: dayFromDate(row.shownOn),
    picture: shownPicture(row.file, `${name} ${label}`),
    yes: yes
      ? {
          approvedBy: yes.approvedBy,
          how: yes.how,
          approvedOn: dayFromDate(yes.approvedOn),
          writtenBy: (yes.recordedById && names.get(yes.recordedById)) ?? 'the collector',
        }
      : null,
  };
}

/** A picture of the request. */
export type RequestPicture = CommissionPictureShown & { id: string; caption: string };

/** The pictures that came with a request. */
export async function listRequestPictures(
  actor: Actor,
  commissionId: string,
): Promise<RequestPicture[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().commissionPicture.findMany({
    where: { commissionId },
    select: { id: true, caption: true, file: { select: fileColumns } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    take: 60,
  });
  return rows.map(({ id, caption, file }, place) => {
    const alt = caption === '' ? `Picture ${place + 1} of the request` : caption;
    return { id, caption, ...shownPicture(file, alt) };
  });
}

/** A version of the agreement. */
export type AgreementTold = {
  version: number;
  priceCents: bigint;
  depositCents: bigint;
  promisedOn: Day | null;
  agreedOn: Day;
  agreedBy: string;
};

/** Every version of what was agreed, the newest first; for those who see money. */
export async function listAgreements(actor: Actor, commissionId: string): Promise<AgreementTold[]> {
  assertAllowed(actor, 'commissions.see_money');
  const rows = await db().agreement.findMany({
    where: { commissionId },
    select: {
      version: true,
      priceCents: true,
      depositCents: true,
      promisedOn: true,
      agreedOn: true,
      agreedBy: true,
    },
    orderBy: { version: 'desc' },
  });
  return rows.map(({ promisedOn, agreedOn, ...row }) => ({
    ...row,
    promisedOn: promisedOn && dayFromDate(promisedOn),
    agreedOn: dayFromDate(agreedOn),
  }));
}

/** A line of the history. */
export type HistoryLine = { id: string; at: Date; sentence: string };

const historyListed = 200;

/** What happened to a commission, the newest first. */
export async function listHistory(
  actor: Actor,
  commissionId: string,
  telling: Pick<Telling, 'currency'>,
): Promise<HistoryLine[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().auditLine.findMany({
    where: { subject: 'Commission', subjectId: commissionId },
    select: { id: true, at: true, staffId: true, did: true, facts: true },
    orderBy: { id: 'desc' },
    take: historyListed,
  });
  const names = await namesOf(rows.flatMap((row) => row.staffId ?? []));
  const seesMoney = allow(actor, 'commissions.see_money').ok;
  const isStruckOut = await isOfStruckOut(commissionId);
  return rows.map((row) => {
    const fact: HistoryFact = {
      who: names.get(row.staffId ?? '') ?? 'Somebody',
      did: row.did,
      facts: isRecord(row.facts) ? row.facts : {},
    };
    const told = isStruckOut ? withoutNames(fact) : fact;
    const { currency } = telling;
    return {
      id: row.id.toString(),
      at: row.at,
      sentence: historySentence(told, { seesMoney, currency }),
    };
  });
}

/** Whether it is the work of one who asked to be struck out. */
async function isOfStruckOut(commissionId: string): Promise<boolean> {
  const where = { id: commissionId, collector: { erasedAt: { not: null } } };
  return (await db().commission.count({ where })) > 0;
}

function isRecord(facts: Prisma.JsonValue): facts is Prisma.JsonObject {
  return typeof facts === 'object' && facts !== null && !Array.isArray(facts);
}

async function namesOf(staffIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await db().staff.findMany({
    where: { id: { in: [...new Set(staffIds)] } },
    select: { id: true, name: true },
  });
  return new Map(rows.map((row) => [row.id, row.name]));
}
