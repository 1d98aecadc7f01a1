import ICAL from 'ical.js';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Doer } from '@/lib/access/rules';
import { tokenSha256 } from '@/lib/commissions/reads/page/open-link';
import {
  appointmentsForCalendar,
  calendarForCollector,
  comingForCollector,
} from '@/lib/installation/reads/calendar/appointments';
import { listFeedOwners, listFeeds } from '@/lib/installation/reads/calendar/feeds';
import { noteFeedUse, openFeed } from '@/lib/installation/reads/calendar/open-feed';
import { calendarStretch } from '@/lib/installation/rules/calendar/feed';
import { calendarText } from '@/lib/installation/rules/calendar/file';
import { eventForStaff } from '@/lib/installation/rules/calendar/told';
import { makeFeed, withdrawFeed } from '@/lib/installation/writes/calendar/feed';
import { db } from '@/lib/platform/db/client';
import { aCommission, aKey, aPerson, aStudio, monday, type TestStudio } from '../studio/a-studio';
import { sql, startAfresh } from '../../helpers/database';

const zone = 'America/Los_Angeles';
let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

async function made(doer: Doer, staffId = doer.actor.id, forWhat = 'telephone') {
  const answer = await makeFeed(doer, { requestKey: aKey(), staffId, forWhat });
  if (!answer.ok || answer.value.secret === null) throw new Error('No address was made.');
  return { feedId: answer.value.feedId, secret: answer.value.secret };
}

type Booking = { leadId: string; crewIds?: string[]; startsAt?: Date; commissionId?: string };

/** An appointment as a row: what is tested here is how it is told, not how it is booked. */
async function anAppointment({ leadId, crewIds = [], startsAt, commissionId }: Booking) {
  const from = startsAt ?? new Date('2026-05-08T16:00:00Z');
  const { id } = await db().appointment.create({
    data: {
      ...{ kind: 'delivery', leadId, address: '4 Ropewalk Lane', note: 'Gate 47' },
      ...{ startsAt: from, endsAt: new Date(from.getTime() + 7_200_000) },
      ...{ bookedById: leadId, bookedAt: monday, meets: 'Marit, 555-0134 010' },
      ...(commissionId ? { commissionId } : {}),
    },
    select: { id: true },
  });
  for (const staffId of crewIds) {
    await db().appointmentCrew.create({
      data: { appointmentId: id, staffId, startsAt: from, endsAt: from },
    });
  }
  return id;
}

async function fetched(lastPart: string, at = monday) {
  const feed = await openFeed(lastPart);
  if (!feed) return null;
  const told = await appointmentsForCalendar(feed.staffId, calendarStretch(at, zone));
  const events = told.map((each) => eventForStaff(each, { zone, system: 'lb', origin: null }));
  const text = calendarText({ name: 'Diary', zone, method: null, at, events });
  const calendar = ICAL.Component.fromString(text);
  return {
    text,
    events: calendar.getAllSubcomponents('vevent').map((each) => new ICAL.Event(each)),
  };
}

describe('an address', () => {
  test('is kept as its hash alone, and opens its owner’s calendar with or without .ics', async () => {
    const { secret } = await made(studio.maker);
    expect(secret).toMatch(/^[\w-]{43}$/);
    const rows = await sql('select * from "CalendarFeed"');
    expect(JSON.stringify(rows)).not.toContain(secret);
    expect(rows).toMatchObject([
      { tokenSha256: tokenSha256(secret), staffId: studio.maker.actor.id },
    ]);
    expect(await openFeed(secret)).toMatchObject({ staffName: 'Osip Lund' });
    expect(await openFeed(`${secret}.ics`)).toMatchObject({ staffName: 'Osip Lund' });
  });

  test.each([
    ['never made', (secret: string) => secret.replace(/./, (first) => (first === 'A' ? 'B' : 'A'))],
    ['cut short', (secret: string) => secret.slice(0, 42)],
    ['with a letter more', (secret: string) => `${secret}A`],
    ['its hash', tokenSha256],
    ['a pattern', () => '%'.repeat(43)],
    ['empty', () => ''],
  ])('opens nothing when it is %s', async (_label, other) => {
    const { secret } = await made(studio.maker);
    expect(await openFeed(other(secret))).toBeNull();
  });

  test('opens nothing once it is withdrawn, and another goes on', async () => {
    const [phone, tablet] = [
      await made(studio.maker),
      await made(studio.maker, undefined, 'tablet'),
    ];
    const shut = await withdrawFeed(studio.maker, { requestKey: aKey(), feedId: phone.feedId });
    expect(shut).toMatchObject({ ok: true });
    expect(await openFeed(phone.secret)).toBeNull();
    expect(await openFeed(tablet.secret)).not.toBeNull();
    const feeds = await listFeeds(studio.maker.actor);
    expect(feeds.map((feed) => [feed.forWhat, feed.withdrawnAt])).toEqual([
      ['tablet', null],
      ['telephone', monday],
    ]);
  });

  test.each([
    ['no longer works here', { active: false }],
    ['no longer sees the diary', { roles: ['books' as const] }],
  ])('opens nothing of somebody who %s', async (_label, data) => {
    const { secret } = await made(studio.maker);
    await db().staff.update({ where: { id: studio.maker.actor.id }, data });
    expect(await openFeed(secret)).toBeNull();
  });

  test('notes when it was fetched, at most once in five minutes', async () => {
    const { secret } = await made(studio.maker);
    const note = async (at: string) => {
      const feed = await openFeed(secret);
      if (feed) await noteFeedUse(feed, new Date(at));
      return (await listFeeds(studio.maker.actor))[0]?.lastUsedAt;
    };
    expect(await note('2026-05-05T10:00:00Z')).toEqual(new Date('2026-05-05T10:00:00Z'));
    expect(await note('2026-05-05T10:04:59Z')).toEqual(new Date('2026-05-05T10:00:00Z'));
    expect(await note('2026-05-05T10:05:00Z')).toEqual(new Date('2026-05-05T10:05:00Z'));
  });
});

describe('who keeps which', () => {
  test('each keeps their own, the owner everyone’s', async () => {
    await made(studio.maker);
    await made(studio.owner, studio.gallery.actor.id);
    expect((await listFeeds(studio.maker.actor)).map((feed) => feed.staffName)).toEqual([
      'Osip Lund',
    ]);
    expect(await listFeeds(studio.owner.actor)).toHaveLength(2);
    expect(await listFeedOwners(studio.maker.actor)).toEqual([
      { id: studio.maker.actor.id, name: 'Osip Lund' },
    ]);
    const owners = await listFeedOwners(studio.owner.actor);
    expect(owners.map(({ name }) => name)).toEqual(['Ines Varga', 'Osip Lund', 'Ruth Callow']);
  });

  test('making is refused for each of its reasons', async () => {
    const ask = (doer: Doer, staffId: string) =>
      makeFeed(doer, { requestKey: aKey(), staffId, forWhat: 'telephone' });
    const { owner, maker, gallery, books } = studio;
    expect(await ask(books, books.actor.id)).toMatchObject({ refusal: { code: 'not_allowed' } });
    expect(await ask(owner, aKey())).toMatchObject({ refusal: { code: 'no_such_person' } });
    expect(await ask(maker, gallery.actor.id)).toMatchObject({
      refusal: { code: 'not_your_calendar' },
    });
    for (let made = 0; made < 10; made += 1) await ask(maker, maker.actor.id);
    expect(await ask(maker, maker.actor.id)).toMatchObject({ refusal: { code: 'too_many_feeds' } });
    expect(await db().calendarFeed.count()).toBe(10);
  });

  test('withdrawing is refused for each of its reasons', async () => {
    const { feedId } = await made(studio.maker);
    const ask = (doer: Doer, id = feedId) => withdrawFeed(doer, { requestKey: aKey(), feedId: id });
    expect(await ask(studio.books)).toMatchObject({ refusal: { code: 'not_allowed' } });
    expect(await ask(studio.maker, aKey())).toMatchObject({ refusal: { code: 'no_such_feed' } });
    expect(await ask(studio.gallery)).toMatchObject({ refusal: { code: 'not_your_calendar' } });
    expect(await ask(studio.owner)).toMatchObject({ ok: true });
    expect(await ask(studio.maker)).toMatchObject({ refusal: { code: 'feed_shut_already' } });
  });

  test('sent twice it makes one, and the second answer has no secret', async () => {
    const input = { requestKey: aKey(), staffId: studio.maker.actor.id, forWhat: 'telephone' };
    const [first, second] = [
      await makeFeed(studio.maker, input),
      await makeFeed(studio.maker, input),
    ];
    expect(first).toMatchObject({ ok: true, value: { secret: expect.any(String) as string } });
    expect(second).toMatchObject({ ok: true, value: { secret: null } });
    expect(await db().calendarFeed.count()).toBe(1);
    expect(await makeFeed(studio.maker, { ...input, forWhat: 'tablet' })).toMatchObject({
      refusal: { code: 'key_used_for_something_else' },
    });
    const lines = await db().auditLine.findMany();
    expect(lines.map(({ did }) => did)).toEqual(['made an address of a calendar']);
    expect(JSON.stringify(await sql('select answer from "CommandKey"'))).not.toContain('secret');
  });

  test('two at once withdraw it once', async () => {
    const { feedId } = await made(studio.maker);
    const answers = await Promise.all(
      [studio.maker, studio.owner].map((doer) =>
        withdrawFeed(doer, { requestKey: aKey(), feedId }),
      ),
    );
    expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
  });
});

describe('what a calendar tells', () => {
  test('whom one leads and whom one goes along with, and nobody else’s', async () => {
    const { secret } = await made(studio.maker);
    const commission = await aCommission(studio.owner);
    const other = await aPerson('maker', 'Wren Adair');
    const led = await anAppointment({ leadId: studio.maker.actor.id, commissionId: commission.id });
    const along = await anAppointment({
      leadId: studio.owner.actor.id,
      crewIds: [studio.maker.actor.id],
      startsAt: new Date('2026-05-09T16:00:00Z'),
    });
    await anAppointment({ leadId: other.actor.id });
    const told = await fetched(secret);
    expect(told?.events.map((event) => event.uid)).toEqual([led, along]);
    expect(told?.events[0]?.summary).toBe('Delivery of Herons at low water');
    expect(told?.events[1]?.description).toContain('Ines Varga leads, with Osip Lund.');
  });

  test('from sixty days back until two years ahead', async () => {
    const { secret } = await made(studio.maker);
    const leadId = studio.maker.actor.id;
    for (const iso of [
      '2026-03-04T16:00:00Z',
      '2026-03-06T16:00:00Z',
      '2028-05-02T16:00:00Z',
      '2028-05-04T16:00:00Z',
    ]) {
      await anAppointment({ leadId, startsAt: new Date(iso) });
    }
    const told = await fetched(secret);
    expect(told?.events.map((event) => event.startDate.toString().slice(0, 10))).toEqual([
      '2026-03-06',
      '2028-05-02',
    ]);
  });

  test('what was called off stays, cancelled, under its UID and a higher sequence', async () => {
    const { secret } = await made(studio.maker);
    const id = await anAppointment({ leadId: studio.maker.actor.id });
    const calledOffAt = new Date('2026-05-06T10:00:00Z');
    await db().appointment.update({
      where: { id },
      data: { calledOffAt, calledOffWhy: 'Storm', sequence: { increment: 1 } },
    });
    const [event] = (await fetched(secret))?.events ?? [];
    expect([event?.uid, event?.sequence]).toEqual([id, 1]);
    expect(event?.component.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(event?.description).toContain('Called off: Storm');
    expect((await fetched(secret))?.text).toContain('DTSTAMP:20260506T100000Z');
  });

  test('no telephone and no price', async () => {
    const { secret } = await made(studio.maker);
    const commission = await aCommission(studio.owner);
    await db().collector.updateMany({ data: { phone: '555 0199 222' } });
    await anAppointment({ leadId: studio.maker.actor.id, commissionId: commission.id });
    const text = (await fetched(secret))?.text.replaceAll('\r\n ', '') ?? '';
    expect(text).toContain('Marit\\, (number on its page)');
    expect(text).not.toMatch(/555|\$/);
  });

  test('the weight by the scale, once there is one', async () => {
    const { secret } = await made(studio.maker);
    const commission = await aCommission(studio.owner);
    await db().commission.update({
      where: { id: commission.id },
      data: { widthUm: 914_400, heightUm: 1_524_000 },
    });
    await anAppointment({ leadId: studio.maker.actor.id, commissionId: commission.id });
    expect((await fetched(secret))?.events[0]?.description).toContain('about, as reckoned');
    await db().progress.create({
      data: {
        ...{ commissionId: commission.id, kind: 'weight', words: '', weightG: 45_000 },
        ...{ on: new Date('2026-05-01'), staffId: studio.maker.actor.id, at: monday },
      },
    });
    expect((await fetched(secret))?.events[0]?.description).toContain(
      'Weighs 99 lb, by the scale.',
    );
  });

  test('a collector’s file is of their own commission alone', async () => {
    const [theirs, other] = [await aCommission(studio.owner), await aCommission(studio.owner)];
    const id = await anAppointment({ leadId: studio.maker.actor.id, commissionId: theirs.id });
    expect(await calendarForCollector(theirs.id, id)).toMatchObject({ id });
    expect(await calendarForCollector(other.id, id)).toBeNull();
    expect(await comingForCollector(other.id, monday)).toEqual([]);
    const off = { calledOffAt: monday, calledOffWhy: 'Storm' };
    await db().appointment.update({ where: { id }, data: off });
    expect(await comingForCollector(theirs.id, monday)).toMatchObject([{ id, isOff: true }]);
    expect(await comingForCollector(theirs.id, new Date('2026-05-08T18:00:00Z'))).toEqual([]);
  });
});
