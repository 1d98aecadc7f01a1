import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { kindWords } from '@/lib/catalogue/rules';
import { dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { jobColumns, readJob, type JobStanding } from '@/lib/studio/reads/standing';
import { finishedPosition } from '@/lib/studio/rules';
import { orderStanding, type OrderFacts, type OrderJob, type OrderStanding } from '../rules';

const pictureColumns = { id: true, widthPx: true, heightPx: true } as const;

/** The columns of an order as pages and writes need them, for {@link orderOf}. */
export const orderColumns = {
  ...{ id: true, number: true, quantity: true, unitPriceCents: true, depositCents: true },
  ...{ wish: true, isSent: true, sendTo: true, readyAboutOn: true, askedOn: true },
  ...{ saidBefore: true, toldReadyAt: true, endedAt: true, endedWhy: true },
  collector: { select: { id: true, name: true, phone: true, email: true } },
  sku: {
    select: {
      ...{ id: true, code: true, kind: true, widthUm: true, heightUm: true, depthUm: true },
      colourway: { select: { name: true } },
      picture: { select: pictureColumns },
      design: { select: { title: true, picture: { select: pictureColumns } } },
    },
  },
  job: { select: jobColumns },
  holds: {
    where: { endedAt: null },
    select: { id: true, quantity: true, editionNumber: true },
    orderBy: { number: 'asc' },
  },
  saleLines: {
    select: {
      ...{ kind: true, quantity: true, netCents: true, sale: { select: { number: true } } },
      returned: { select: { quantity: true, netCents: true } },
    },
    orderBy: [{ sale: { number: 'asc' } }, { position: 'asc' }],
  },
} as const satisfies Prisma.SpecialOrderSelect;

type OrderRow = Prisma.SpecialOrderGetPayload<{ select: typeof orderColumns }>;

/** A special order as pages show it. Money in cents. */
export type OrderShown = OrderFacts & {
  id: string;
  number: number;
  title: string;
  /** Kind and colourway in words. */
  what: string;
  sku: { id: string; code: string; widthUm: number; heightUm: number; depthUm: number | null };
  picture: { src: string; alt: string; width: number; height: number } | null;
  collector: { id: string; name: string; phone: string | null; email: string | null };
  unitPriceCents: Cents;
  totalCents: Cents;
  wish: string;
  sendTo: string;
  askedOn: Day;
  saidBefore: string;
  endedWhy: string;
  standing: OrderStanding;
  holds: readonly { id: string; quantity: number; editionNumber: number | null }[];
  /** The receipts of its money and of its hand-over, in their order. */
  receipts: readonly { number: number; isHandOver: boolean }[];
};

/** An order with where it stands, from its row. */
export function orderOf(row: OrderRow, todayOn: Day, zone: string): OrderShown {
  const { id, number, quantity, unitPriceCents, wish, sendTo, saidBefore, endedWhy, holds } = row;
  const facts = factsOf(row, todayOn, zone);
  const what = `${kindWords(row.sku.kind)}, ${row.sku.colourway.name}`;
  const { title } = row.sku.design;
  return {
    ...{ id, number, unitPriceCents, wish, sendTo, saidBefore, endedWhy, title, what, holds },
    ...facts,
    ...{ sku: row.sku, collector: row.collector, picture: pictureOf(row, `${title}, ${what}`) },
    totalCents: unitPriceCents * BigInt(quantity),
    askedOn: dayFromDate(row.askedOn),
    standing: orderStanding(facts, todayOn),
    receipts: receiptsOf(row),
  };
}

function factsOf(row: OrderRow, todayOn: Day, zone: string): OrderFacts {
  const { quantity, depositCents, isSent, job } = row;
  const handed = row.saleLines.filter((line) => line.kind === 'piece');
  const paid = row.saleLines.filter((line) => line.kind === 'order_deposit');
  return {
    ...{ quantity, depositCents, isSent },
    paidCents: sumCents(
      paid.map((line) => line.netCents - sumCents(line.returned.map((back) => back.netCents))),
    ),
    handedOver: sum(
      handed.map((line) => line.quantity - sum(line.returned.map((back) => back.quantity))),
    ),
    waitingHere: sum(row.holds.map((hold) => hold.quantity)),
    readyAboutOn: dayFromDate(row.readyAboutOn),
    job: job && jobOf(readJob(job, todayOn)),
    toldReadyOn: row.toldReadyAt && dayOf(row.toldReadyAt, zone),
    hasEnded: row.endedAt !== null,
  };
}

function jobOf(job: JobStanding): OrderJob {
  const [most] = job.standings.toSorted((one, other) => other.pieces - one.pieces);
  const last = finishedPosition(job);
  return {
    ...{ number: job.number, pieces: job.wanted, at: most?.name ?? 'not begun' },
    finished: job.standings.find((each) => each.position === last)?.pieces ?? 0,
    likelyOn: job.ready?.likelyOn ?? null,
  };
}

function receiptsOf({ saleLines }: OrderRow) {
  const numbers = new Map<number, boolean>();
  for (const { kind, sale } of saleLines) {
    numbers.set(sale.number, kind === 'piece' || (numbers.get(sale.number) ?? false));
  }
  return [...numbers].map(([number, isHandOver]) => ({ number, isHandOver }));
}

function pictureOf({ sku }: OrderRow, alt: string): OrderShown['picture'] {
  const file = sku.picture ?? sku.design.picture;
  if (!file?.widthPx || !file.heightPx) return null;
  return { src: `/files/${file.id}`, alt, width: file.widthPx, height: file.heightPx };
}

function sum(counts: readonly number[]): number {
  return counts.reduce((total, count) => total + count, 0);
}
