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
import type { CancelTerms } from '@/lib/commissions/rules/money/ending';
import { moneyNow, type MoneyNow } from '@/lib/commissions/rules/money/now';
import type { PlanStepDue } from '@/lib/commissions/rules/money/plan';
import type { CommissionMoney } from '@/lib/commissions/rules/money/sums';
import {
  nextWords,
  standingSentence,
  type Telling,
} from '@/lib/commissions/rules/course/sentences';
import { standing, type Standing } from '@/lib/commissions/rules/course/standing';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { Gallery } from '@/lib/platform/settings';
import type { Cents } from '@/lib/money/rules';
import { readTotal } from './agreement/total';
import { requestOf, requestSelect, type RequestTold } from './enquiry/request';
import { factsOf } from './facts';
import { factsSelect, letOff } from './facts-select';
import { soldSums } from './money/sold-sums';
import { fileColumns, pictureOf, pictureSelect, type CommissionPictureShown } from './picture';
import { readTelling } from './telling';

const sheetSelect = {
  ...factsSelect,
  ...pictureSelect,
  id: true,
  number: true,
  ...requestSelect,
  collector: true,
  agreements: {
    select: {
      ...factsSelect.agreements.select,
      taxPlaceId: true,
      taxPlace: { select: { name: true } },
      ...{ designFeeCents: true, cancelMakingPercent: true, cancelFinishedPercent: true },
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
      sale: {
        select: { ...letOff, totalCents: true, netCents: true, taxCents: true, number: true },
      },
    },
  },
} as const satisfies Prisma.CommissionSelect;

type SheetRow = Prisma.CommissionGetPayload<{ select: typeof sheetSelect }>;

export type { RequestTold } from './enquiry/request';

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
  /**
   * Null while nothing is agreed, and for those who do not see money. After an early end the price is
   * what stays of it.
   */
  money: CommissionMoney | null;
  /** The plan of payments as it stands; empty after an early end, and for those who do not see money. */
  plan: readonly PlanStepDue[];
  override: CommissionFacts['override'];
  handOver: { handedOn: Day; signedBy: string; receiptNumber: number } | null;
  ending: CommissionFacts['ending'];
  paidCents: bigint | null;
  facts: CommissionFacts;
  /** What the agreement says stays when it ends early. */
  cancelTerms: CancelTerms | null;
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
  const sums = await moneyOf(row, facts, { telling, gallery });
  const money = sums?.money ?? null;
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
    plan: telling.seesMoney ? (sums?.plan ?? []) : [],
    override: facts.override,
    handOver: handOverOf(row),
    ending: facts.ending,
    paidCents: telling.seesMoney ? paidCents(facts) : null,
    facts,
    cancelTerms: cancelTermsOf(row),
    acts: actsOpen(facts, money?.owedCents ?? null, actor, telling.today),
  };
}

function agreementOf(row: SheetRow, facts: CommissionFacts): Sheet['agreement'] {
  const kept = row.agreements[0];
  if (!kept || !facts.agreement) return null;
  return { ...facts.agreement, taxPlaceId: kept.taxPlaceId, taxPlace: kept.taxPlace.name };
}

function cancelTermsOf(row: SheetRow): CancelTerms | null {
  const kept = row.agreements[0];
  if (!kept) return null;
  const { designFeeCents, cancelMakingPercent, cancelFinishedPercent } = kept;
  return {
    designFeeCents,
    cancelMakingPercent: cancelMakingPercent.toString(),
    cancelFinishedPercent: cancelFinishedPercent.toString(),
  };
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
): Promise<MoneyNow | null> {
  const kept = row.agreements[0];
  if (!kept) return null;
  if (facts.ending) return moneyNow(facts, nothing);
  const { priceCents, taxCents } = await sumsOf(row, { telling, gallery });
  return moneyNow(facts, { priceCents, taxCents, depositCents: kept.depositCents });
}

/** After an early end only what stays counts. */
const nothing = { priceCents: 0n, taxCents: 0n, depositCents: 0n };

async function sumsOf(
  row: SheetRow,
  { telling, gallery }: { telling: Telling; gallery: Gallery },
): Promise<{ priceCents: Cents; taxCents: Cents }> {
  if (row.handOver) {
    return soldSums(row.handOver.sale);
  }
  const roundBy = gallery.roundTaxBy;
  const total = await readTotal(db(), row.id, { on: telling.today, roundBy });
  return { priceCents: total?.priceCents ?? 0n, taxCents: total?.tax.taxCents ?? 0n };
}
