import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { TenderKind } from '@/lib/ledger/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { findGalleryTerms, type GalleryTerms } from '../reads';
import { ourPartOf, type Bearer } from '../rules';
import { papersListed } from './papers';

const linesMost = 200;

/** A statement in a list, with what is still owed for it. */
export type StatementListed = {
  number: number;
  saleId: string;
  saleNumber: number;
  fromOn: Day;
  untilOn: Day;
  dueOn: Day;
  dueCents: Cents;
  paidCents: Cents;
  owedCents: Cents;
};

const statementFields = {
  ...{ number: true, saleId: true, fromOn: true, untilOn: true, dueOn: true, dueCents: true },
  sale: {
    select: {
      number: true,
      settlements: {
        select: { number: true, amountCents: true, kind: true, reference: true, receivedOn: true },
        orderBy: { number: 'asc' as const },
      },
      tenders: {
        where: { kind: 'on_account' as const },
        select: {
          refunds: { where: { kind: 'on_account' as const }, select: { amountCents: true } },
        },
      },
    },
  },
} as const;

type StatementRow = {
  number: number;
  saleId: string;
  fromOn: Date;
  untilOn: Date;
  dueOn: Date;
  dueCents: bigint;
  sale: {
    number: number;
    settlements: { amountCents: bigint }[];
    tenders: { refunds: { amountCents: bigint }[] }[];
  };
};

/** The statements of another gallery, the newest first; at most 24. */
export async function listStatements(
  actor: Actor,
  consigneeId: string,
): Promise<StatementListed[]> {
  assertAllowed(actor, 'outside.keep');
  const rows = await db().consignmentReport.findMany({
    where: { consigneeId },
    select: statementFields,
    orderBy: { number: 'desc' },
    take: papersListed,
  });
  return rows.map(listedFrom);
}

function listedFrom(row: StatementRow): StatementListed {
  const paidCents = sumCents(row.sale.settlements.map((each) => each.amountCents));
  const refunds = row.sale.tenders.flatMap((tender) => tender.refunds);
  const takenOffCents = sumCents(refunds.map((each) => each.amountCents));
  const { number, saleId, dueCents } = row;
  return {
    ...{ number, saleId, saleNumber: row.sale.number, dueCents, paidCents },
    ...{ fromOn: dayFromDate(row.fromOn), untilOn: dayFromDate(row.untilOn) },
    dueOn: dayFromDate(row.dueOn),
    owedCents: dueCents - paidCents - takenOffCents,
  };
}

/** A line of a statement: the piece, and how its due comes about. In cents, all pieces together. */
export type StatementLine = {
  sku: string;
  title: string;
  number: number | null;
  quantity: number;
  soldOn: Day;
  retailCents: Cents;
  discountCents: Cents;
  borneBy: Bearer;
  shareCents: Cents;
  dueCents: Cents;
};

/** Money that came for a statement. */
export type StatementPayment = {
  number: number;
  amountCents: Cents;
  kind: TenderKind;
  reference: string;
  on: Day;
};

/** A statement as its page and its paper show it. */
export type StatementPaper = StatementListed & {
  gallery: GalleryTerms;
  lines: StatementLine[];
  payments: StatementPayment[];
};

/**
 * A statement by its number.
 *
 * @returns null when none has that number
 */
export async function findStatement(actor: Actor, number: number): Promise<StatementPaper | null> {
  assertAllowed(actor, 'outside.keep');
  const row = await db().consignmentReport.findUnique({
    where: { number },
    select: {
      ...statementFields,
      consigneeId: true,
      lines: {
        select: {
          ...{ quantity: true, editionNumber: true, soldOn: true },
          ...{ retailCents: true, discountCents: true, borneBy: true, dueCents: true },
          sku: { select: { code: true, design: { select: { title: true } } } },
        },
        orderBy: { position: 'asc' },
        take: linesMost,
      },
    },
  });
  const gallery = row && (await findGalleryTerms(actor, row.consigneeId));
  if (!row || !gallery) return null;
  const payments = row.sale.settlements.map(({ receivedOn, ...payment }) => ({
    ...payment,
    on: dayFromDate(receivedOn),
  }));
  return { ...listedFrom(row), gallery, lines: row.lines.map(lineFrom), payments };
}

type LineRow = {
  quantity: number;
  editionNumber: number | null;
  soldOn: Date;
  retailCents: bigint;
  discountCents: bigint;
  borneBy: Bearer;
  dueCents: bigint;
  sku: { code: string; design: { title: string } };
};

/** Their share is what is left of the price when our due and our part of a discount are gone. */
function lineFrom({ sku, editionNumber, soldOn, ...line }: LineRow): StatementLine {
  const grossCents = line.retailCents * BigInt(line.quantity);
  const oursCents = line.dueCents + ourPartOf(line.discountCents, line.borneBy);
  return {
    ...{ ...line, sku: sku.code, title: sku.design.title, number: editionNumber },
    soldOn: dayFromDate(soldOn),
    shareCents: grossCents - oursCents,
  };
}
