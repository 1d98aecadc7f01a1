import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { readHandOverFacts } from '@/lib/commissions/reads/agreement/hand-over';
import type { HandOverFacts } from '@/lib/commissions/rules/agreement/hand-over';
import { dayOf, type Day } from '@/lib/dates/rules';
import { handsOver, mayHaveItSigned } from '@/lib/installation/rules/work/before-signing';
import { itemsOf, type WorkItem } from '@/lib/installation/rules/work/items';
import { heldTicks, wordsSaid } from '@/lib/installation/rules/work/ticks';
import { db } from '@/lib/platform/db/client';
import type { Gallery } from '@/lib/platform/settings';
import { isOwedBefore } from './is-owed';
import { loadOrder, type OrderLoaded } from './load-order';

/** A tick with the name of whoever made it. */
export type TickTold = OrderLoaded['ticks'][number] & { by: string };

/** The day of an appointment on one page: everything that whoever goes along has to know. */
export type WorkOrder = Omit<OrderLoaded, 'handOver' | 'ticks'> & {
  startsAt: Date;
  endsAt: Date;
  startsOn: Day;
  address: string;
  note: string;
  codes: string;
  meets: string;
  prepares: string;
  fallBack: string;
  travelMinutes: number;
  lead: string;
  others: string[];
  calledOffWhy: string | null;
  commission: { id: string; number: number; title: string; collector: string } | null;
  phone: string | null;
  survey: SurveyTold | null;
  planVersion: number | null;
  items: readonly WorkItem[];
  ticks: TickTold[];
  snags: { id: string; words: string; mendBy: string; mendByOn: Date; isMended: boolean }[];
  /** What stands above a signature, as far as it is known; null where nothing is handed over. */
  handOverFacts: HandOverFacts | null;
  signed: { signedBy: string; at: Date; by: string; receiptNumber: number } | null;
  maySign: boolean;
  /** Something has to be paid before it goes, and the owner has not said that it goes anyway. */
  needsOwner: boolean;
  staff: { id: string; name: string }[];
};

const surveySelect = {
  ...{ version: true, surveyedOn: true, provedHow: true, services: true, isPlasterSound: true },
  ...{ access: true, steps: true, narrowWidthUm: true, narrowHeightUm: true, lift: true },
  ...{ floor: true, hasOutlet: true, people: true, building: true, heat: true, note: true },
  ...{ backing: true, wall: true },
} as const satisfies Prisma.WallSurveySelect;

/** What of the survey of a wall rides along. */
export type SurveyTold = Prisma.WallSurveyGetPayload<{ select: typeof surveySelect }>;

const orderSelect = {
  ...{ startsAt: true, endsAt: true, address: true, note: true, meets: true, prepares: true },
  ...{ codes: true },
  ...{ fallBack: true, travelMinutes: true, leadId: true, calledOffWhy: true },
  crew: { select: { staff: { select: { id: true, name: true } } } },
  snags: {
    select: {
      ...{ id: true, words: true, mendByOn: true },
      mendBy: { select: { name: true } },
      mended: { select: { snagId: true } },
    },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    take: 200,
  },
  commission: {
    select: {
      ...{ id: true, number: true, title: true },
      collector: { select: { name: true, phone: true } },
      surveys: { select: surveySelect, orderBy: { version: 'desc' }, take: 1 },
      fixingPlans: { select: { version: true }, orderBy: { version: 'desc' }, take: 1 },
      handOver: { select: { sale: { select: { number: true } } } },
    },
  },
} as const satisfies Prisma.AppointmentSelect;

type OrderRow = Prisma.AppointmentGetPayload<{ select: typeof orderSelect }>;

/**
 * The work order of an appointment.
 *
 * @param id a uuid
 * @returns null when there is no such appointment
 */
export async function findWorkOrder(
  actor: Actor,
  id: string,
  { gallery, today }: { gallery: Gallery; today: Day },
): Promise<WorkOrder | null> {
  assertAllowed(actor, 'installation.do');
  const loaded = await loadOrder(db(), id, gallery.lengthUnit);
  const row = loaded && (await db().appointment.findUnique({ where: { id }, select: orderSelect }));
  if (!row) return null;
  const { ticks, handOver, ...order } = loaded;
  const { crewIds } = order;
  const staff = await listWhoWorksHere();
  const nameOf = (staffId: string) => staff.find((one) => one.id === staffId)?.name ?? 'somebody';
  return {
    ...order,
    ...toldOf(row, gallery.timeZone),
    ...(await toHandOver(loaded, { gallery, today })),
    staff: staff.filter(({ active }) => active).map(({ id: each, name }) => ({ id: each, name })),
    items: itemsOf(order.facts),
    ticks: ticks.map((tick) => ({ ...tick, by: nameOf(tick.staffId) })),
    signed: handOver && {
      ...{ signedBy: handOver.signedBy, at: handOver.at, by: nameOf(handOver.recordedById) },
      receiptNumber: row.commission?.handOver?.sale.number ?? 0,
    },
    maySign: mayHaveItSigned(actor, crewIds),
  };
}

/** What stands above the signature, and whether the owner has to be asked first. */
async function toHandOver(
  { kind, commissionId, handOver, ticks }: OrderLoaded,
  now: { gallery: Gallery; today: Day },
): Promise<Pick<WorkOrder, 'handOverFacts' | 'needsOwner'>> {
  if (!handsOver(kind) || commissionId === null) return { handOverFacts: null, needsOwner: false };
  const said = wordsSaid(heldTicks(ticks), 'owner_word');
  const isOpen = handOver === null && said === null;
  return {
    handOverFacts: await readHandOverFacts(db(), commissionId),
    needsOwner: isOpen && (await isOwedBefore(db(), commissionId, now)),
  };
}

/** Whether somebody can write down that it goes before it is paid. */
export function mayGiveOwnersWord(actor: Actor): boolean {
  return isAllowed(actor.roles, 'commissions.hand_over');
}

async function listWhoWorksHere() {
  return db().staff.findMany({
    select: { id: true, name: true, active: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: 300,
  });
}

function toldOf(row: OrderRow, zone: string) {
  const { commission, crew, leadId, snags, ...appointment } = row;
  const names = crew.map(({ staff }) => staff);
  return {
    ...appointment,
    startsOn: dayOf(row.startsAt, zone),
    lead: names.find(({ id }) => id === leadId)?.name ?? '',
    others: names.filter(({ id }) => id !== leadId).map(({ name }) => name),
    commission: commission && {
      ...{ id: commission.id, number: commission.number, title: commission.title },
      collector: commission.collector.name,
    },
    phone: commission?.collector.phone ?? null,
    survey: commission?.surveys[0] ?? null,
    planVersion: commission?.fixingPlans[0]?.version ?? null,
    snags: snags.map(({ mendBy, mended, ...snag }) => ({
      ...snag,
      mendBy: mendBy.name,
      isMended: mended !== null,
    })),
  };
}
