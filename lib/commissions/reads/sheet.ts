import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addressLine, shortReach } from '@/lib/collectors/rules';
import { actsOpen, type Act } from '@/lib/commissions/rules/acts';
import { band, type BandPeg } from '@/lib/commissions/rules/course/band';
import {
  mayBegin,
  paidCents,
  type CommissionFacts,
  type MayBegin,
} from '@/lib/commissions/rules/facts';
import {
  commissionMoney,
  commissionTaxCents,
  type CommissionMoney,
} from '@/lib/commissions/rules/money/sums';
import {
  nextWords,
  standingSentence,
  type Telling,
} from '@/lib/commissions/rules/course/sentences';
import { standing, type Standing } from '@/lib/commissions/rules/course/standing';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { Gallery } from '@/lib/platform/settings';
import { readTaxParts } from '@/lib/sales/reads';
import { factsOf } from './facts';
import { factsSelect } from './facts-select';
import { fileColumns, pictureOf, pictureSelect, type CommissionPictureShown } from './picture';
import { readTelling } from './telling';

const sheetSelect = {
  ...factsSelect,
  ...pictureSelect,
  id: true,
  number: true,
  wish: true,
  avoid: true,
  colours: true,
  exposure: true,
  wall: true,
  room: true,
  siteAddress: true,
  widthUm: true,
  heightUm: true,
  depthUm: true,
  wishedOn: true,
  budgetFromCents: true,
  budgetToCents: true,
  askedAt: true,
  takenBy: { select: { name: true } },
  collector: true,
  agreements: {
    select: {
      ...factsSelect.agreements.select,
      taxPlaceId: true,
      taxPlace: { select: { name: true } },
    },
    orderBy: { version: 'desc' },
    take: 1,
  },
  sketches: {
    ...factsSelect.sketches,
    select: { ...factsSelect.sketches.select, file: { select: fileColumns } },
  },
  startOverride: { select: { why: true, at: true, staffId: true } },
  handOver: {
    select: {
      ...factsSelect.handOver.select,
      signedBy: true,
      sale: { select: { totalCents: true, netCents: true, taxCents: true, number: true } },
    },
  },
} as const satisfies Prisma.CommissionSelect;

type SheetRow = Prisma.CommissionGetPayload<{ select: typeof sheetSelect }>;

/** What was asked for; null is "not known yet". */
export type RequestTold = Pick<
  SheetRow,
  | 'wish'
  | 'avoid'
  | 'colours'
  | 'exposure'
  | 'wall'
  | 'room'
  | 'siteAddress'
  | 'widthUm'
  | 'heightUm'
  | 'depthUm'
  | 'budgetFromCents'
  | 'budgetToCents'
> & { wishedOn: Day | null; askedAt: Date; takenBy: string };

/** The head of a commission's sheet: everything but the papers further down. */
export type Sheet = {
  id: string;
  number: number;
  title: string;
  collector: { id: string; name: string; reach: string | null; address: string | null };
  request: RequestTold;
  picture: CommissionPictureShown | null;
  standing: Standing;
  sentence: string;
  next: string | null;
  band: BandPeg[];
  mayBegin: MayBegin;
  agreement: (CommissionFacts['agreement'] & { taxPlaceId: string; taxPlace: string }) | null;
  /** Null while nothing is agreed, and for those who do not see money. */
  money: CommissionMoney | null;
  override: CommissionFacts['override'];
  handOver: { handedOn: Day; signedBy: string; receiptNumber: number } | null;
  ending: CommissionFacts['ending'];
  paidCents: bigint | null;
  /** What whoever looks can do now. */
  acts: ReadonlySet<Act>;
  telling: Telling;
  gallery: Gallery;
};

/**
 * The sheet of a commission, by its number.
 *
 * Before the hand-over the tax is reckoned at today's rates of the site; the hand-over fixes it.
 *
 * @returns null when there is no such number
 */
export async function findSheet(actor: Actor, number: number): Promise<Sheet | null> {
  assertAllowed(actor, 'commissions.see');
  const row = await db().commission.findUnique({ where: { number }, select: sheetSelect });
  if (!row) return null;
  const { telling, zone, gallery } = await readTelling(actor);
  const facts = factsOf(row, zone);
  const now = standing(facts, telling.today);
  const money = await moneyOf(row, facts, { telling, gallery });
  const { id, title, collector } = row;
  return {
    ...{ id, number, title, telling, gallery },
    collector: {
      id: collector.id,
      name: collector.name,
      reach: shortReach(collector),
      address: addressLine(collector),
    },
    request: requestOf(row),
    picture: pictureOf(row),
    standing: now,
    sentence: standingSentence(now, telling),
    next: nextWords(now.where),
    band: band(facts, now.where),
    mayBegin: mayBegin(facts, telling.today),
    agreement: agreementOf(row, facts),
    money: telling.seesMoney ? money : null,
    override: facts.override,
    handOver: handOverOf(row),
    ending: facts.ending,
    paidCents: telling.seesMoney ? paidCents(facts) : null,
    acts: actsOpen(facts, money?.owedCents ?? null, actor, telling.today),
  };
}

function requestOf(row: SheetRow): RequestTold {
  const { wish, avoid, colours, exposure, wall, room, siteAddress } = row;
  const { widthUm, heightUm, depthUm, budgetFromCents, budgetToCents, askedAt } = row;
  return {
    ...{ wish, avoid, colours, exposure, wall, room, siteAddress },
    ...{ widthUm, heightUm, depthUm, budgetFromCents, budgetToCents, askedAt },
    wishedOn: row.wishedOn && dayFromDate(row.wishedOn),
    takenBy: row.takenBy.name,
  };
}

function agreementOf(row: SheetRow, facts: CommissionFacts): Sheet['agreement'] {
  const kept = row.agreements[0];
  if (!kept || !facts.agreement) return null;
  return { ...facts.agreement, taxPlaceId: kept.taxPlaceId, taxPlace: kept.taxPlace.name };
}

function handOverOf(row: SheetRow): Sheet['handOver'] {
  if (!row.handOver) return null;
  const { handedOn, signedBy, sale } = row.handOver;
  return { handedOn: dayFromDate(handedOn), signedBy, receiptNumber: sale.number };
}

async function moneyOf(
  row: SheetRow,
  facts: CommissionFacts,
  { telling, gallery }: { telling: Telling; gallery: Gallery },
): Promise<CommissionMoney | null> {
  const kept = row.agreements[0];
  if (!kept) return null;
  const { priceCents, depositCents } = kept;
  const paid = { depositCents, paidCents: paidCents(facts) };
  if (row.handOver) {
    const { netCents, taxCents } = row.handOver.sale;
    return commissionMoney({ ...paid, priceCents: netCents, taxCents });
  }
  const { parts } = await readTaxParts(kept.taxPlaceId, telling.today);
  const taxCents = commissionTaxCents(priceCents, parts, gallery.roundTaxBy);
  return commissionMoney({ ...paid, priceCents, taxCents });
}
