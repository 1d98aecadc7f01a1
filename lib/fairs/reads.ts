import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { readSoldAtFair, readSoldByFair, type SoldDesign } from './reads/earned';
import { readTakeList, type TakenPiece } from './reads/standing';
import { fairEarning, type FairEarning, type FairMoney } from './rules/earning';

/** The most fairs that the list shows: the latest. */
export const fairsListed = 200;

/** A fair as it was written down; what it cost in cents, the hours worked in minutes. */
export type Fair = {
  id: string;
  number: number;
  name: string;
  town: string;
  placeId: string;
  taxPlaceId: string;
  taxPlace: string;
  fromOn: Day;
  untilOn: Day;
  feeCents: Cents;
  travelCents: Cents;
  otherCents: Cents;
  minutes: number;
  note: string;
  closedAt: Date | null;
};

const fairColumns = {
  ...{ id: true, number: true, name: true, town: true, placeId: true, taxPlaceId: true },
  ...{ fromOn: true, untilOn: true, feeCents: true, travelCents: true, otherCents: true },
  ...{ minutes: true, note: true, closedAt: true },
  taxPlace: { select: { name: true } },
} as const;

type FairRow = Omit<Fair, 'taxPlace' | 'fromOn' | 'untilOn'> & {
  taxPlace: { name: string };
  fromOn: Date;
  untilOn: Date;
};

function fairOf({ taxPlace, fromOn, untilOn, ...row }: FairRow): Fair {
  const days = { fromOn: dayFromDate(fromOn), untilOn: dayFromDate(untilOn) };
  return { ...row, ...days, taxPlace: taxPlace.name };
}

/** A fair in the list: how many pieces stand there, and what was sold before tax. */
export type FairListed = Fair & { standing: number; soldCents: Cents };

/** The fairs, the latest first; at most {@link fairsListed}. */
export async function listFairs(actor: Actor): Promise<FairListed[]> {
  assertAllowed(actor, 'outside.keep');
  const rows = await db().fair.findMany({
    select: {
      ...fairColumns,
      place: { select: { levels: { select: { onHand: true }, where: { onHand: { gt: 0 } } } } },
    },
    orderBy: [{ fromOn: 'desc' }, { number: 'desc' }],
    take: fairsListed,
  });
  const soldOf = await readSoldByFair(rows.map((row) => row.id));
  return rows.map(({ place, ...row }) => ({
    ...fairOf(row),
    standing: place.levels.reduce((sum, level) => sum + level.onHand, 0),
    soldCents: soldOf.get(row.id) ?? 0n,
  }));
}

/** A fair with its take list, what it sold and what it earned. */
export type FairSheet = {
  fair: Fair;
  list: TakenPiece[];
  sold: SoldDesign[];
  money: FairMoney;
  earning: FairEarning;
};

/** One fair by its number; null when there is none. */
export async function findFair(actor: Actor, number: number): Promise<FairSheet | null> {
  assertAllowed(actor, 'outside.keep');
  const row = await db().fair.findUnique({ where: { number }, select: fairColumns });
  if (!row) return null;
  const fair = fairOf(row);
  const { timeZone, lengthUnit } = await getGallery();
  const today = dayOf(now(), timeZone);
  const on = fair.fromOn > today ? fair.fromOn : today < fair.untilOn ? today : fair.untilOn;
  const [list, sold] = await Promise.all([
    readTakeList(db(), { fairId: fair.id, placeId: fair.placeId, on, lengthUnit }),
    readSoldAtFair(fair.id),
  ]);
  const { feeCents, travelCents, otherCents, minutes } = fair;
  const money = {
    ...{ feeCents, travelCents, otherCents, minutes },
    soldCents: sumCents(sold.map((each) => each.netCents)),
    makingCents: sumCents(sold.map((each) => each.makingCents)),
  };
  return { fair, list, sold, money, earning: fairEarning(money) };
}
