import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { claimStageOf, type ClaimEventKind, type ClaimStage } from '@/lib/sending/rules/claims';
import type { ConditionWhen, MarkTold } from '@/lib/sending/rules/condition';

/** A kept picture, as a page or a paper shows it. */
export type PictureKept = { fileId: string; width: number; height: number; caption: string };

/** A picture of a report, with its marks in their order. */
export type ViewTold = PictureKept & { id: string; marks: readonly MarkTold[] };

/** How something looked, and who looked. */
export type ReportTold = {
  id: string;
  when: ConditionWhen;
  words: string;
  on: Day;
  by: string;
  at: Date;
  views: readonly ViewTold[];
};

/** What came of a claim on a day. */
export type ClaimEventTold = {
  kind: ClaimEventKind;
  on: Day;
  amountCents: Cents;
  words: string;
  by: string;
};

/** Damage on the way, and what came of it. */
export type ClaimTold = {
  id: string;
  number: number;
  foundOn: Day;
  words: string;
  askedCents: Cents;
  reportByOn: Day;
  claimByOn: Day;
  by: string;
  stage: ClaimStage;
  pictures: readonly PictureKept[];
  events: readonly ClaimEventTold[];
};

const fileColumns = { select: { id: true, widthPx: true, heightPx: true } } as const;

/** What reports are read by. */
export const reportColumns = {
  ...{ id: true, when: true, words: true, on: true, staffId: true, at: true },
  views: {
    orderBy: { position: 'asc' },
    select: {
      ...{ id: true, caption: true, file: fileColumns },
      marks: { orderBy: { position: 'asc' }, select: { x: true, y: true, words: true } },
    },
  },
} as const satisfies Prisma.ConditionReportSelect;

/** What claims are read by. */
export const claimColumns = {
  ...{ id: true, number: true, foundOn: true, words: true, askedCents: true },
  ...{ reportByOn: true, claimByOn: true, staffId: true },
  pictures: { orderBy: { position: 'asc' }, select: { caption: true, file: fileColumns } },
  events: {
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    select: { kind: true, on: true, amountCents: true, words: true, staffId: true },
  },
} as const satisfies Prisma.DamageClaimSelect;

type ReportRow = Prisma.ConditionReportGetPayload<{ select: typeof reportColumns }>;
type ClaimRow = Prisma.DamageClaimGetPayload<{ select: typeof claimColumns }>;
type FileRow = ReportRow['views'][number]['file'];

/** Who somebody is, by their id. */
export type NameOf = (staffId: string) => string;

/** The names of whoever works or worked here. */
export async function readNames(from: Prisma.TransactionClient): Promise<NameOf> {
  const rows = await from.staff.findMany({ select: { id: true, name: true } });
  const names = new Map(rows.map(({ id, name }) => [id, name]));
  return (staffId) => names.get(staffId) ?? 'somebody';
}

function pictureOf({ id, widthPx, heightPx }: FileRow, caption: string): PictureKept {
  return { fileId: id, width: widthPx ?? 1200, height: heightPx ?? 900, caption };
}

/** A report from its row. */
export function reportOf(row: ReportRow, nameOf: NameOf): ReportTold {
  const { staffId, views, ...report } = row;
  return {
    ...{ ...report, on: dayFromDate(row.on), by: nameOf(staffId) },
    views: views.map(({ id, caption, file, marks }) => ({
      ...{ id, ...pictureOf(file, caption), marks },
    })),
  };
}

/** A claim from its row. */
export function claimOf(row: ClaimRow, nameOf: NameOf): ClaimTold {
  const { staffId, events, pictures, ...claim } = row;
  return {
    ...{ ...claim, by: nameOf(staffId), stage: claimStageOf(events) },
    ...{ foundOn: dayFromDate(row.foundOn), reportByOn: dayFromDate(row.reportByOn) },
    claimByOn: dayFromDate(row.claimByOn),
    pictures: pictures.map(({ file, caption }) => pictureOf(file, caption)),
    events: events.map(({ staffId: by, ...event }) => ({
      ...{ ...event, on: dayFromDate(event.on), by: nameOf(by) },
    })),
  };
}
