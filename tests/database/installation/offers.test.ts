import { beforeEach, describe, expect, test } from 'vitest';
import { findAppointment } from '@/lib/installation/reads';
import { daysForCollector, listDayOffers } from '@/lib/installation/reads/offers/days';
import { findFreeTimes } from '@/lib/installation/reads/offers/free';
import { slotWishInput, type OfferDaysInput } from '@/lib/installation/input/offers/days';
import { bookAppointment } from '@/lib/installation/writes';
import { addAbsence } from '@/lib/installation/writes/crew/crew';
import { chooseDay } from '@/lib/installation/writes/offers/choose-day';
import { offerDays, withdrawDays } from '@/lib/installation/writes/offers/days';
import { db } from '@/lib/platform/db/client';
import { aCommission, agreed, aKey, aStudio, monday, type TestStudio } from '../studio/a-studio';
import { startAfresh } from '../../helpers/database';
import { lookAtWall } from '../../helpers/look-at-wall';
import { aBooking, crewOf } from './a-booking';

const zone = 'America/Los_Angeles';
const how = { zone, now: monday };
const words = { before_ready: 'It was made elsewhere.' };
let studio: TestStudio;
let commissionId: string;
let maker: string;
let helper: string;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
  [maker, helper] = [studio.maker.actor.id, studio.owner.actor.id];
  commissionId = (await aCommission(studio.owner)).id;
  await lookAtWall(commissionId);
});

function anOffer(change: Partial<OfferDaysInput> = {}): OfferDaysInput {
  return {
    ...{ requestKey: aKey(), commissionId, kind: 'hanging', leadId: maker, crewIds: [helper] },
    ...{ address: '4 Ropewalk Lane', travelMinutes: 40, note: '', minutes: 120, words },
    days: [
      { day: '2026-05-08', from: '10:00' },
      { day: '2026-05-11', from: '10:00' },
    ],
    ...change,
  };
}

function code(result: { ok: true } | { ok: false; refusal: { code: string } }): string {
  return result.ok ? 'done' : result.refusal.code;
}

async function offered(change: Partial<OfferDaysInput> = {}, doer = studio.gallery) {
  const answer = await offerDays(doer, anOffer(change));
  if (!answer.ok) throw new Error(`Refused: ${answer.refusal.code}`);
  return answer.value.offerId;
}

function choose(offerId: string, position = 1) {
  return chooseDay(studio.gallery, { requestKey: aKey(), commissionId, offerId, position });
}

async function freeNow(): Promise<boolean[]> {
  const [shown] = await daysForCollector(commissionId, how);
  return shown?.slots.map(({ isFree }) => isFree) ?? [];
}

describe('days are offered', () => {
  test('of a hanging only on a wall that is known, and after the adhesive has cured', async () => {
    const look = { commissionId, version: 2, wall: null, staffId: maker, at: monday };
    const { id } = await aCommission(studio.owner, 'Nine terns');
    expect(code(await offerDays(studio.gallery, anOffer({ commissionId: id })))).toBe(
      'wall_unknown',
    );
    const visit = { commissionId: id, kind: 'site_visit' } as const;
    expect(code(await offerDays(studio.gallery, anOffer(visit)))).toBe('done');
    await db().assembly.create({
      data: {
        ...{ commissionId, board: 'Plywood', adhesive: 'Epoxy', staffId: maker, at: monday },
        ...{ finishedAt: monday, curesAt: new Date('2026-05-11T16:59:00Z') },
      },
    });
    expect(code(await offerDays(studio.gallery, anOffer()))).toBe('still_cures');
    const later = { days: [{ day: '2026-05-11', from: '10:00' }] } as const;
    const after = anOffer({ days: [...later.days] });
    expect(code(await offerDays(studio.gallery, after))).toBe('done');
    await db().wallSurvey.create({ data: { ...look, surveyedOn: monday } });
    expect(code(await offerDays(studio.gallery, { ...after, requestKey: aKey() }))).toBe(
      'wall_unknown',
    );
  });

  test('by people who work here and are not elsewhere then', async () => {
    expect(code(await offerDays(studio.gallery, anOffer({ leadId: aKey() })))).toBe(
      'leads_nothing_here',
    );
    expect(code(await offerDays(studio.gallery, anOffer({ crewIds: [aKey()] })))).toBe(
      'goes_nowhere',
    );
    expect(code(await offerDays(studio.books, anOffer()))).toBe('not_allowed');
    const visit = aBooking({ leadId: helper, kind: 'site_visit', from: '11:00', to: '12:00' });
    expect(code(await bookAppointment(studio.gallery, visit))).toBe('done');
    expect(await offerDays(studio.gallery, anOffer())).toMatchObject({
      refusal: { code: 'not_free_then', name: 'Ines Varga', on: '2026-05-08' },
    });
  });

  test('that are not as they should be only with a word, which goes along when one is chosen', async () => {
    const sunday = { days: [{ day: '2026-05-10', from: '10:00' } as const] };
    const refused = await offerDays(studio.gallery, anOffer({ ...sunday, words: {} }));
    expect(refused).toMatchObject({
      refusal: { code: 'asks', questions: [{ about: 'before_ready' }, { about: 'closed' }] },
    });
    const said = { ...words, closed: 'They are away all week.' };
    const offerId = await offered({ ...sunday, words: said });
    const [told] = await listDayOffers(studio.gallery.actor, commissionId, how);
    expect(told).toMatchObject({ otherNames: ['Ines Varga'], travelMinutes: 40 });
    expect(code(await choose(offerId))).toBe('done');
    const { appointmentId } = await db().dayOfferChosen.findUniqueOrThrow({ where: { offerId } });
    const booked = await findAppointment(studio.owner.actor, appointmentId, zone);
    expect(booked).toMatchObject({ travelMinutes: 40, leadName: 'Osip Lund' });
    const kept = booked?.words.map(({ about, by }) => `${about} ${by}`).toSorted();
    expect(kept).toEqual(['before_ready Ruth Callow', 'closed Ruth Callow']);
    expect(await crewOf(appointmentId)).toEqual(['Ines Varga', 'Osip Lund']);
  });
});

describe('on the collector’s page', () => {
  test('a day is free only for all who go along, with time for the way, and while they are there', async () => {
    const offerId = await offered();
    expect(await freeNow()).toEqual([true, true]);
    const visit = aBooking({ leadId: helper, kind: 'site_visit', day: '2026-05-08' });
    const near = { ...visit, from: '12:30', to: '13:00', address: '9 Ferry Steps' };
    const word = { words: { travel_short: 'It is on the way back.' } };
    expect(code(await bookAppointment(studio.gallery, { ...near, ...word }))).toBe('done');
    expect(await freeNow()).toEqual([false, true]);
    expect(code(await choose(offerId))).toBe('day_taken');
    const away = {
      requestKey: aKey(),
      staffId: maker,
      fromOn: '2026-05-11',
      toOn: '2026-05-11',
    } as const;
    expect(code(await addAbsence(studio.maker, { ...away, why: '' }))).toBe('done');
    expect(await freeNow()).toEqual([false, false]);
    expect(code(await choose(offerId, 2))).toBe('day_taken');
    expect(await db().appointment.count()).toBe(1);
  });

  test('what the agreement asks for first bars a choice, unless the owner let it go', async () => {
    await agreed(studio, commissionId, 50_000n);
    const balance = { ...words, balance_owed: 'Pays on the day.' };
    expect(code(await offerDays(studio.gallery, anOffer({ words: balance })))).toBe('asks');
    const offerId = await offered({ words: balance }, studio.owner);
    const [shown] = await daysForCollector(commissionId, how);
    expect(shown).toMatchObject({ isBarred: false, owed: { beforeCents: 180_000n } });
    await db().dayOffer.update({ where: { id: offerId }, data: { withdrawnAt: monday } });
    const other = await db().dayOffer.create({
      data: {
        ...{
          commissionId,
          kind: 'hanging',
          leadId: maker,
          address: 'x',
          offeredById: helper,
          at: monday,
        },
        slots: {
          create: {
            ...{ position: 1, startsAt: new Date('2026-05-12T17:00Z') },
            endsAt: new Date('2026-05-12T18:00Z'),
          },
        },
      },
    });
    expect((await daysForCollector(commissionId, how))[0]?.isBarred).toBe(true);
    expect(await choose(other.id)).toMatchObject({
      refusal: { code: 'balance_first', owedCents: 180_000n },
    });
    expect(code(await choose(offerId))).toBe('offer_withdrawn');
  });

  test('of two commissions that want the same helper at once one is booked', async () => {
    const { id } = await aCommission(studio.owner, 'Nine terns');
    await lookAtWall(id);
    const mine = await offered();
    const theirs = await offered({ commissionId: id, leadId: studio.gallery.actor.id });
    const other = { requestKey: aKey(), commissionId: id, offerId: theirs, position: 1 };
    const both = await Promise.all([choose(mine), chooseDay(studio.gallery, other)]);
    expect(both.map(code).toSorted()).toEqual(['day_taken', 'done']);
  });
});

test('days taken back are taken back once', async () => {
  const offerId = await offered();
  const back = () => withdrawDays(studio.gallery, { requestKey: aKey(), commissionId, offerId });
  expect(code(await back())).toBe('done');
  expect(code(await back())).toBe('offer_withdrawn');
});

test('free times are those of all who go along, from the day after today', async () => {
  const wish = slotWishInput.parse({ kind: 'site_visit', hours: '2', address: '4 Ropewalk Lane' });
  const look = () =>
    findFreeTimes(studio.gallery.actor, commissionId, {
      ...{ wish: { ...wish, leadId: maker, crewIds: [helper] }, ...how },
    });
  const found = await look();
  expect([found.fromOn, found.untilOn]).toEqual(['2026-05-05', '2026-06-02']);
  expect(found.slots[0]?.startsAt).toEqual(new Date('2026-05-05T16:00:00Z'));
  const visit = aBooking({ leadId: helper, kind: 'site_visit', day: '2026-05-05', to: '16:00' });
  expect(code(await bookAppointment(studio.gallery, visit))).toBe('done');
  expect((await look()).slots[0]?.startsAt).toEqual(new Date('2026-05-06T16:00:00Z'));
  const hanging = slotWishInput.parse({ hours: '2' });
  const none = await findFreeTimes(studio.gallery.actor, commissionId, {
    ...{ wish: { ...hanging, leadId: maker, crewIds: [] }, ...how },
  });
  expect(none).toMatchObject({ slots: [], ready: { readyOn: null } });
});
