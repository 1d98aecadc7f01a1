import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { findGalleryTerms, type GalleryTerms } from '../reads';

/** How many papers a list shows; for this area's own reads. */
export const papersListed = 24;
const linesMost = 200;

/** A consignment note in a list. */
export type NoteListed = { number: number; isBack: boolean; on: Day; pieces: number };

/** The latest notes of another gallery, out and back, the newest first; at most 24. */
export async function listNotes(actor: Actor, consigneeId: string): Promise<NoteListed[]> {
  assertAllowed(actor, 'outside.keep');
  const rows = await db().consignmentNote.findMany({
    where: { consigneeId },
    select: {
      ...{ number: true, isBack: true },
      transfer: { select: { movedOn: true } },
      lines: { select: { quantity: true } },
    },
    orderBy: { number: 'desc' },
    take: papersListed,
  });
  return rows.map(({ number, isBack, transfer, lines }) => ({
    ...{ number, isBack, on: dayFromDate(transfer.movedOn) },
    pieces: lines.reduce((sum, line) => sum + line.quantity, 0),
  }));
}

const pieceWords = {
  code: true,
  flaw: true,
  design: { select: { title: true } },
  colourway: { select: { name: true } },
} as const;

/** A line of a consignment note. */
export type NoteLine = {
  sku: string;
  title: string;
  what: string;
  number: number | null;
  quantity: number;
  retailCents: Cents;
};

/** A consignment note as its paper shows it. */
export type NotePaper = {
  number: number;
  isBack: boolean;
  on: Day;
  moveNumber: number;
  note: string;
  from: string;
  to: string;
  gallery: GalleryTerms;
  lines: NoteLine[];
  pieces: number;
  retailCents: Cents;
};

/**
 * A consignment note by its number.
 *
 * @returns null when none has that number
 */
export async function findNote(actor: Actor, number: number): Promise<NotePaper | null> {
  assertAllowed(actor, 'outside.keep');
  const row = await db().consignmentNote.findUnique({
    where: { number },
    select: {
      ...{ number: true, isBack: true, consigneeId: true },
      transfer: {
        select: {
          ...{ number: true, movedOn: true, note: true },
          from: { select: { name: true } },
          to: { select: { name: true } },
        },
      },
      lines: {
        select: {
          ...{ quantity: true, editionNumber: true, retailCents: true },
          sku: { select: pieceWords },
        },
        orderBy: { position: 'asc' },
        take: linesMost,
      },
    },
  });
  const gallery = row && (await findGalleryTerms(actor, row.consigneeId));
  if (!row || !gallery) return null;
  const lines = row.lines.map(({ sku, quantity, editionNumber, retailCents }) => ({
    ...{ sku: sku.code, title: sku.design.title, what: sku.colourway.name },
    ...{ number: editionNumber, quantity, retailCents },
  }));
  const { transfer } = row;
  return {
    ...{ number: row.number, isBack: row.isBack, on: dayFromDate(transfer.movedOn), gallery },
    ...{ moveNumber: transfer.number, note: transfer.note },
    ...{ from: transfer.from.name, to: transfer.to.name, lines },
    pieces: lines.reduce((sum, line) => sum + line.quantity, 0),
    retailCents: sumCents(lines.map((line) => line.retailCents * BigInt(line.quantity))),
  };
}
