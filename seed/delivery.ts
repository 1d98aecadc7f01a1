import type { Doer } from '@/lib/access/rules';
import { addDays, dateFromDay, dayFromDate, instantOf, type Day } from '@/lib/dates/rules';
import { addAbsenceInput, keepHoursInput, keepWayInput } from '@/lib/installation/input/crew/crew';
import { afterCareDue } from '@/lib/installation/rules/care/due';
import { addAbsence, keepHours, keepWay } from '@/lib/installation/writes/crew/crew';
import { addTileWall } from '@/lib/installation/writes/tiles/keep';
import { addSnag } from '@/lib/installation/writes/work/snags';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok } from '@/lib/platform/result';
import { proposeStep } from '@/lib/sending/writes/boxes';
import { startStep } from '@/lib/sending/writes/shipments';
import { wayStep } from '@/lib/sending/writes/way';
import { done } from './done';
import { absent, hours, parcels, snags, tiledWall, ways, type Parcel } from './scenario/delivery';
import { gallery } from './scenario/gallery';
import type { SetUp } from './set-up';

type Demo = { today: Day; setUp: SetUp };

/** Who works when, what is still to be put right, who is looked after, and what is on its way. */
export async function playDelivery(demo: Demo): Promise<void> {
  await keepCrew(demo);
  const played = await inTransaction<true, never>(async (tx) => {
    for (const each of snags) await putRight(tx, demo, each);
    await lookAfter(tx);
    for (const parcel of parcels) await send(tx, demo, parcel);
    done(await addTileWall(tx, on(demo, 5), { commissionId: null, ...tiledWall }));
    return ok(true as const);
  });
  invariant(played.ok, 'The demo is not refused.');
}

async function keepCrew({ today, setUp }: Demo): Promise<void> {
  const doer = {
    actor: setUp.owner,
    at: instantOf(addDays(today, -200), '11:00', gallery.timeZone),
  };
  for (const [who, fields] of Object.entries(hours)) {
    const staffId = who === 'maker' ? setUp.maker.id : setUp.seller.id;
    done(await keepHours(doer, keepHoursInput.parse({ requestKey: newId(), staffId, ...fields })));
  }
  for (const way of ways)
    done(await keepWay(doer, keepWayInput.parse({ requestKey: newId(), ...way })));
  const { fromInDays, days, why } = absent;
  const fromOn = addDays(today, fromInDays);
  const away = { staffId: setUp.seller.id, fromOn, toOn: addDays(fromOn, days - 1), why };
  const said = {
    actor: setUp.seller,
    at: instantOf(addDays(today, -9), '11:00', gallery.timeZone),
  };
  done(await addAbsence(said, addAbsenceInput.parse({ requestKey: newId(), ...away })));
}

async function putRight(tx: Tx, demo: Demo, snag: (typeof snags)[number]): Promise<void> {
  const { id } = await tx.commission.findFirstOrThrow({ where: { title: snag.title } });
  const told = { words: snag.words, mendById: demo.setUp.maker.id };
  const mendByOn = addDays(demo.today, snag.mendInDays);
  done(
    await addSnag(tx, on(demo, 12), { ...told, commissionId: id, appointmentId: null, mendByOn }),
  );
}

/** What was handed over is looked after; what should have been done by now was done. */
async function lookAfter(tx: Tx): Promise<void> {
  const { fixingsLookMonths } = await tx.gallery.findUniqueOrThrow({ where: { id: 1 } });
  for (const { commissionId, handedOn, at } of await tx.handOver.findMany()) {
    const hung = { kind: 'hanging', isOutdoors: false, freezes: false, weightG: 29_900 } as const;
    const due = afterCareDue({ ...hung, handedOn: dayFromDate(handedOn), fixingsLookMonths });
    const rows = due.map(({ kind, dueOn }) => {
      return { id: newId(), commissionId, kind, dueOn: dateFromDay(dueOn), at };
    });
    await tx.afterCare.createMany({ data: rows });
  }
}

async function send(tx: Tx, demo: Demo, parcel: Parcel): Promise<void> {
  const rule = await tx.carrierRule.findFirstOrThrow({ where: { name: parcel.rule } });
  const { toName, toAddress, carrier, insuredCents } = parcel;
  const doer = on(demo, parcel.sentDaysAgo);
  const { shipmentId } = done(
    await startStep(tx, doer, {
      ...{ commissionId: null, saleNumber: null, collectorId: null, how: 'carrier' },
      ...{ carrierRuleId: rule.id, carrier, toName, toAddress, toPhone: '', insuredCents },
      ...{ insuredBy: 'our own transit policy', note: parcel.note },
    }),
  );
  done(await proposeStep(tx, doer, { shipmentId, pieces: parcel.pieces }));
  if (parcel.state === 'to pack') return;
  const said = { shipmentId, requestKey: newId(), words: '', picture: null };
  const sentOn = addDays(demo.today, -parcel.sentDaysAgo);
  done(await wayStep(tx, doer, { ...said, kind: 'packed', on: sentOn }));
  done(await wayStep(tx, doer, { ...said, kind: 'sent', on: sentOn, tracking: parcel.tracking }));
  if (parcel.state !== 'arrived') return;
  const arrivedOn = addDays(sentOn, 3);
  const arrived = { kind: 'arrived', on: arrivedOn, takenBy: toName } as const;
  done(await wayStep(tx, on(demo, parcel.sentDaysAgo - 3), { ...said, ...arrived }));
}

function on({ today, setUp }: Demo, daysAgo: number): Doer {
  const at = instantOf(addDays(today, -daysAgo), '15:40', gallery.timeZone);
  return { actor: setUp.seller, at };
}
