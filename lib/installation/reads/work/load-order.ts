import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { weightEstimate } from '@/lib/commissions/rules/enquiry/weight';
import type { AppointmentKind } from '@/lib/installation/rules/diary/kinds';
import type { PlanStanding } from '@/lib/installation/rules/work/before-signing';
import type { WorkFacts } from '@/lib/installation/rules/work/stages';
import type { Tick } from '@/lib/installation/rules/work/ticks';
import type { LengthSystem } from '@/lib/units/rules';

/** From what a weight is known. */
export type WeightFrom = 'scale' | 'plan' | 'agreement' | 'estimate';

/** A tick with who made it. */
export type TickKept = Tick & { staffId: string; receivedAt: Date };

/** Everything that a work order is decided by. */
export type OrderLoaded = {
  id: string;
  kind: AppointmentKind;
  isCalledOff: boolean;
  bookedAt: Date;
  crewIds: string[];
  commissionId: string | null;
  weight: { weightG: number; from: WeightFrom } | null;
  facts: WorkFacts;
  freezes: boolean;
  plan: PlanStanding;
  isWeighed: boolean;
  hasFixingsPicture: boolean;
  hasPictureInPlace: boolean;
  handOver: { signedBy: string; at: Date; recordedById: string } | null;
  ticks: TickKept[];
};

const newest = { orderBy: { version: 'desc' }, take: 1 } as const;

const orderSelect = {
  ...{ id: true, kind: true, calledOffAt: true, bookedAt: true, commissionId: true },
  crew: { select: { staffId: true } },
  ticks: {
    select: {
      ...{ id: true, item: true, isDone: true, words: true, staffId: true },
      ...{ tickedAt: true, receivedAt: true },
    },
    orderBy: [{ tickedAt: 'asc' }, { id: 'asc' }],
    take: 5_000,
  },
  commission: {
    select: {
      ...{ exposure: true, freezes: true, wall: true, widthUm: true, heightUm: true },
      surveys: {
        ...newest,
        select: {
          ...{ id: true, wall: true, isOutdoors: true, freezes: true },
          ...{ isOverPeople: true, quakes: true },
        },
      },
      fixingPlans: { ...newest, select: { surveyId: true, isAllowed: true, weightG: true } },
      agreements: { ...newest, select: { proposal: { select: { weightG: true } } } },
      progress: {
        where: { kind: { in: ['weight', 'fixing', 'picture'] } },
        select: { kind: true, weightG: true, fileId: true, at: true },
        orderBy: [{ on: 'desc' }, { at: 'desc' }, { id: 'desc' }],
        take: 1_000,
      },
      handOver: { select: { signedBy: true, at: true, signedAt: true, recordedById: true } },
    },
  },
} as const satisfies Prisma.AppointmentSelect;

type OrderRow = Prisma.AppointmentGetPayload<{ select: typeof orderSelect }>;
type CommissionRow = NonNullable<OrderRow['commission']>;

/**
 * What a work order is decided by; null when there is no such appointment.
 *
 * @param id a uuid
 */
export async function loadOrder(
  from: Prisma.TransactionClient,
  id: string,
  system: LengthSystem = 'in',
): Promise<OrderLoaded | null> {
  const row = await from.appointment.findUnique({ where: { id }, select: orderSelect });
  if (!row) return null;
  const { kind, commission, ticks, bookedAt, commissionId } = row;
  return {
    ...{ id, kind, bookedAt, commissionId, ticks },
    isCalledOff: row.calledOffAt !== null,
    crewIds: row.crew.map(({ staffId }) => staffId),
    ...(commission ? pieceOf(commission, row, system) : noPiece(kind)),
  };
}

type OfThePiece = Omit<
  OrderLoaded,
  'id' | 'kind' | 'bookedAt' | 'commissionId' | 'ticks' | 'isCalledOff' | 'crewIds'
>;

function noPiece(kind: AppointmentKind): OfThePiece {
  const place = { wall: null, isOutdoors: false, isOverPeople: false, quakes: false };
  return {
    ...{ weight: null, plan: null, freezes: false, handOver: null },
    facts: { kind, weightG: null, ...place },
    ...{ isWeighed: false, hasFixingsPicture: false, hasPictureInPlace: false },
  };
}

function pieceOf(
  commission: CommissionRow,
  { kind, bookedAt }: OrderRow,
  system: LengthSystem,
): OfThePiece {
  const weight = weightOf(commission, system);
  const { progress, surveys } = commission;
  return {
    weight,
    facts: { kind, weightG: weight?.weightG ?? null, ...placeOf(commission, surveys[0]) },
    freezes: surveys[0]?.freezes ?? commission.freezes ?? false,
    plan: planOf(commission),
    isWeighed: weight?.from === 'scale',
    hasFixingsPicture: progress.some((each) => each.kind === 'fixing' && each.fileId !== null),
    hasPictureInPlace: progress.some((each) => isInPlace(each, bookedAt)),
    handOver: handOverOf(commission.handOver),
  };
}

function placeOf(
  { wall, exposure }: CommissionRow,
  survey: CommissionRow['surveys'][number] | undefined,
): Omit<WorkFacts, 'kind' | 'weightG'> {
  const isOutdoors = exposure === 'outdoors';
  if (!survey) return { wall, isOutdoors, isOverPeople: false, quakes: false };
  return {
    wall: survey.wall ?? wall,
    isOutdoors: survey.isOutdoors ?? isOutdoors,
    isOverPeople: survey.isOverPeople ?? false,
    quakes: survey.quakes ?? false,
  };
}

function planOf({ fixingPlans, surveys }: CommissionRow): PlanStanding {
  const plan = fixingPlans[0];
  if (!plan) return null;
  const { isAllowed, weightG, surveyId } = plan;
  return { isAllowed, weightG, isOld: surveyId !== surveys[0]?.id };
}

/** A picture since the day was booked may show it in place; the earlier ones show the making. */
function isInPlace(each: CommissionRow['progress'][number], bookedAt: Date): boolean {
  return each.kind === 'picture' && each.fileId !== null && each.at >= bookedAt;
}

function handOverOf(handOver: CommissionRow['handOver']): OrderLoaded['handOver'] {
  if (!handOver) return null;
  const { signedBy, signedAt, at, recordedById } = handOver;
  return { signedBy, recordedById, at: signedAt ?? at };
}

function weightOf(commission: CommissionRow, system: LengthSystem): OrderLoaded['weight'] {
  const scale = commission.progress.find(({ kind, weightG }) => kind === 'weight' && weightG);
  if (scale?.weightG) return { weightG: scale.weightG, from: 'scale' };
  const planned = commission.fixingPlans[0]?.weightG;
  if (planned) return { weightG: planned, from: 'plan' };
  const agreed = commission.agreements[0]?.proposal?.weightG;
  if (agreed) return { weightG: agreed, from: 'agreement' };
  const estimate = weightEstimate(commission, system);
  return estimate && { weightG: estimate.weightG, from: 'estimate' };
}
