import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import { isAllowed, type Actor, type Permission } from '@/lib/access/rules';
import { addDays, dateFromDay, dayFromDate, dayOf, dayStartAt, type Day } from '@/lib/dates/rules';
import { afterCareWords } from '@/lib/installation/rules/care/due';
import { opensAbout, type OtherLine } from '@/lib/installation/rules/diary/others';
import { db } from '@/lib/platform/db/client';

/** Days of which it is asked, both included, in the gallery's zone. */
type Stretch = { fromOn: Day; untilOn: Day; zone: string };

/** The most lines of one kind. */
const most = 200;

/**
 * What else the gallery has on some days: kilns to light and to open, holds that end, fairs, looks
 * after pieces that hang, days that were promised. Whoever may not look at one of them does not see
 * it here either.
 */
export async function listOthers(actor: Actor, stretch: Stretch): Promise<OtherLine[]> {
  assertAllowed(actor, 'diary.see');
  const reads: readonly [Permission, (stretch: Stretch) => Promise<OtherLine[]>][] = [
    ['studio.see', kilns],
    ['outside.keep', fairs],
    ['stock.hold', holds],
    ['diary.see', looks],
    ['commissions.see', promised],
  ];
  const allowed = reads.filter(([permission]) => isAllowed(actor.roles, permission));
  const found = await Promise.all(allowed.map(([, read]) => read(stretch)));
  return found
    .flat()
    .filter(({ fromOn, untilOn }) => fromOn <= stretch.untilOn && untilOn >= stretch.fromOn);
}

async function kilns({ fromOn, untilOn }: Stretch): Promise<OtherLine[]> {
  const rows = await db().firing.findMany({
    where: {
      ...{ calledOffAt: null, opened: { is: null } },
      plannedOn: { gte: dateFromDay(addDays(fromOn, -30)), lte: dateFromDay(untilOn) },
    },
    select: {
      ...{ id: true, number: true, cone: true, plannedOn: true },
      kiln: { select: { name: true } },
      lit: { select: { litOn: true } },
    },
    orderBy: { number: 'asc' },
    take: most,
  });
  return rows.map(({ id, number, cone, plannedOn, kiln, lit }): OtherLine => {
    const litOn = lit && dayFromDate(lit.litOn);
    const on = litOn ? opensAbout(litOn) : dayFromDate(plannedOn);
    const what = litOn ? 'to be opened once it is cool' : `to be lit, cone ${cone}`;
    return {
      ...{ kind: 'kiln', key: id, fromOn: on, untilOn: on },
      words: `${kiln.name}, firing ${number}: ${what}`,
      href: `/studio/firings/${number}`,
    };
  });
}

async function fairs({ fromOn, untilOn }: Stretch): Promise<OtherLine[]> {
  const rows = await db().fair.findMany({
    where: { fromOn: { lte: dateFromDay(untilOn) }, untilOn: { gte: dateFromDay(fromOn) } },
    select: { id: true, number: true, name: true, town: true, fromOn: true, untilOn: true },
    orderBy: { fromOn: 'asc' },
    take: most,
  });
  return rows.map(({ id, number, name, town, ...days }): OtherLine => ({
    ...{ kind: 'fair', key: id, words: town === '' ? name : `${name}, ${town}` },
    ...{ fromOn: dayFromDate(days.fromOn), untilOn: dayFromDate(days.untilOn) },
    href: `/fairs/${number}`,
  }));
}

async function holds({ fromOn, untilOn, zone }: Stretch): Promise<OtherLine[]> {
  const rows = await db().hold.findMany({
    where: {
      endedAt: null,
      untilAt: { gte: dayStartAt(fromOn, zone), lt: dayStartAt(addDays(untilOn, 1), zone) },
    },
    select: {
      ...{ id: true, number: true, forWhom: true, untilAt: true },
      sku: { select: { design: { select: { title: true } } } },
    },
    orderBy: { untilAt: 'asc' },
    take: most,
  });
  return rows.flatMap(({ id, number, forWhom, untilAt, sku }): OtherLine[] => {
    if (!untilAt) return [];
    const on = dayOf(untilAt, zone);
    const words = `${sku.design.title}, for ${forWhom}, ends`;
    return [{ kind: 'hold', key: id, fromOn: on, untilOn: on, words, href: `/holds/${number}` }];
  });
}

async function looks({ fromOn, untilOn }: Stretch): Promise<OtherLine[]> {
  const rows = await db().afterCare.findMany({
    where: {
      ...{ done: { is: null } },
      dueOn: { gte: dateFromDay(fromOn), lte: dateFromDay(untilOn) },
    },
    select: {
      ...{ id: true, kind: true, dueOn: true },
      commission: { select: { number: true, title: true } },
    },
    orderBy: { dueOn: 'asc' },
    take: most,
  });
  return rows.map(({ id, kind, dueOn, commission }): OtherLine => {
    const on = dayFromDate(dueOn);
    return {
      ...{ kind: 'after_care', key: id, fromOn: on, untilOn: on },
      words: `${afterCareWords[kind]}: ${commission.title}`,
      href: `/commissions/${commission.number}`,
    };
  });
}

/** By the last signed change that moved the day, else by the agreement; until it is handed over. */
async function promised({ fromOn, untilOn }: Stretch): Promise<OtherLine[]> {
  const rows = await db().commission.findMany({
    where: { ending: null, handOver: null, agreements: { some: {} } },
    select: {
      ...{ id: true, number: true, title: true },
      agreements: { select: { promisedOn: true }, orderBy: { version: 'desc' }, take: 1 },
      changeOrders: {
        where: { signed: { isNot: null }, promisedAfter: { not: null } },
        select: { promisedAfter: true },
        orderBy: { number: 'desc' },
        take: 1,
      },
    },
    orderBy: { number: 'asc' },
    take: 1_000,
  });
  return rows.flatMap(({ id, number, title, agreements, changeOrders }): OtherLine[] => {
    const day = changeOrders[0]?.promisedAfter ?? agreements[0]?.promisedOn ?? null;
    const on = day && dayFromDate(day);
    if (!on || on < fromOn || on > untilOn) return [];
    const href = `/commissions/${number}`;
    return [{ kind: 'promised', key: id, fromOn: on, untilOn: on, words: title, href }];
  });
}
