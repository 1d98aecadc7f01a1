import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Actor, PageDoer } from '@/lib/access/rules';
import { daysForCollector } from '@/lib/installation/reads/offers/days';
import { pictureForCollector } from '@/lib/commissions/reads/page/files';
import { headForCollector } from '@/lib/commissions/reads/page/head';
import { listAnswers, listLinks } from '@/lib/commissions/reads/page/links';
import { doerOf, noteUse, openLink } from '@/lib/commissions/reads/page/open-link';
import { chooseDay } from '@/lib/installation/writes/offers/choose-day';
import { withdrawDays } from '@/lib/installation/writes/offers/days';
import { makeLink, withdrawLink } from '@/lib/commissions/writes/page/link';
import type { Day } from '@/lib/dates/rules';
import { bookAppointment } from '@/lib/installation/writes';
import { invariant } from '@/lib/platform/invariant';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { inSession, sql, startAfresh } from '@/tests/helpers/database';
import { lookAtWall } from '@/tests/helpers/look-at-wall';
import { choice, code, offered, untilSomeoneWaits } from './a-page';
import { asked, dayAt, done, on, sketched } from './a-commission';

let gallery: OpenGallery;
const day: Day = '2026-05-12';
const now = dayAt(day);
const zone = 'America/Los_Angeles';
const how = { zone, now };

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

async function opened(commissionId: string, days = 60) {
  const input = { requestKey: randomUUID(), commissionId, forName: 'Marit Oland', days };
  const { linkId, token } = done(await makeLink(on(gallery.clerk, day), input));
  invariant(token, 'An address made now is shown now.');
  const link = await openLink(token, now);
  invariant(link, 'An address made now opens.');
  return { linkId, token, link, doer: doerOf(link, now) };
}

async function aPage(by: Actor = gallery.maker) {
  const { commissionId } = await asked(by, day);
  await lookAtWall(commissionId);
  return { commissionId, ...(await opened(commissionId)) };
}

function withdrawn(commissionId: string, linkId: string, by = gallery.clerk) {
  return withdrawLink(on(by, day), { requestKey: randomUUID(), commissionId, linkId });
}

describe('an address', () => {
  test('is a secret of 256 bits, of which only the hash is kept', async () => {
    const { token, linkId } = await aPage();
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    const kept = await sql('select * from "CollectorLink" where id = $1', [linkId]);
    const keys = await sql('select * from "CommandKey"');
    const told = await sql('select * from "AuditLine"');
    expect(JSON.stringify([kept, keys, told])).not.toContain(token);
  });

  test('opens until it runs out, and nothing else opens', async () => {
    const { token, link, commissionId } = await aPage();
    expect(link.commissionId).toBe(commissionId);
    const aMoment = new Date(link.runsOutAt.getTime() - 1);
    expect(await openLink(token, aMoment)).not.toBeNull();
    expect(await openLink(token, link.runsOutAt)).toBeNull();
    expect(
      await openLink(`${token.slice(0, 42)}${token.endsWith('A') ? 'B' : 'A'}`, now),
    ).toBeNull();
    expect(await openLink(`${token} `, now)).toBeNull();
    expect(await openLink('', now)).toBeNull();
  });

  test('sent twice it is made once, and its secret is told once', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const input = { requestKey: randomUUID(), commissionId, forName: 'Marit Oland', days: 60 };
    const first = done(await makeLink(on(gallery.clerk, day), input));
    const again = done(await makeLink(on(gallery.clerk, day), input));
    expect(again).toEqual({ ...first, token: null });
    expect(await listLinks(gallery.clerk, commissionId, now)).toHaveLength(1);
  });

  test('is made only by those who see money', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const input = { requestKey: randomUUID(), commissionId, forName: 'Marit Oland', days: 60 };
    expect(code(await makeLink(on(gallery.maker, day), input))).toBe('not_allowed');
    expect(code(await makeLink(on(gallery.books, day), input))).toBe('not_allowed');
  });

  test('is withdrawn once and for good, by the commission it belongs to', async () => {
    const { commissionId, linkId, token } = await aPage();
    const other = await aPage();
    expect(code(await withdrawn(other.commissionId, linkId))).toBe('unknown_link');
    expect(code(await withdrawn(commissionId, linkId))).toBe('done');
    expect(code(await withdrawn(commissionId, linkId))).toBe('link_shut_already');
    expect(await openLink(token, now)).toBeNull();
    const backToLife = sql('update "CollectorLink" set "withdrawnAt" = null where id = $1', [
      linkId,
    ]);
    await expect(backToLife).rejects.toThrow('link_stays_shut');
  });

  test('says when it was last looked at, at most every five minutes', async () => {
    const { link, commissionId, token } = await aPage();
    await noteUse(link, now);
    const seen = await openLink(token, now);
    invariant(seen, 'It is still open.');
    await noteUse(seen, new Date(now.getTime() + 60_000));
    expect((await listLinks(gallery.clerk, commissionId, now))[0]?.lastUsedAt).toEqual(now);
  });
});

describe('through the address of one commission', () => {
  test('no other is written to, and its pictures are not seen', async () => {
    const mine = await aPage();
    const other = await asked(gallery.maker, day);
    await lookAtWall(other.commissionId);
    const { offerId } = await offered(gallery, other.commissionId);
    const theirs = choice(other.commissionId, offerId, 1);
    expect(code(await chooseDay(mine.doer, theirs))).toBe('unknown_commission');
    const mixed = choice(mine.commissionId, offerId, 1);
    expect(code(await chooseDay(mine.doer, mixed))).toBe('unknown_offer');
    const { id } = await sketched(gallery.maker, other.commissionId, day, 77);
    const [row] = await sql<{ fileId: string }>('select "fileId" from "Sketch" where id = $1', [
      id,
    ]);
    invariant(row, 'The sketch has its picture.');
    expect(await pictureForCollector(mine.commissionId, row.fileId)).toBeNull();
    expect(await pictureForCollector(other.commissionId, row.fileId)).not.toBeNull();
  });

  test('where the piece is told, with no money in it', async () => {
    const { commissionId } = await aPage();
    const head = await headForCollector(commissionId, { zone, today: day });
    expect(head.pegs).toHaveLength(10);
    expect(head.sentence).not.toMatch(/\$/);
  });
});

describe('one of the days is chosen', () => {
  test('on their page: it is booked for whoever leads it, and told as their answer', async () => {
    const { commissionId, doer } = await aPage();
    const { offerId, second } = await offered(gallery, commissionId);
    done(await chooseDay(doer, choice(commissionId, offerId, 2)));
    const rows = await sql(
      `select a."leadId", a."bookedById", c."chosenBy", c."recordedById"
         from "Appointment" a join "DayOfferChosen" c on c."appointmentId" = a.id where c."offerId" = $1`,
      [offerId],
    );
    const maker = gallery.maker.id;
    expect(rows).toEqual([
      { leadId: maker, bookedById: maker, chosenBy: 'Marit Oland', recordedById: null },
    ]);
    const [shown] = await daysForCollector(commissionId, how);
    expect(shown?.chosen).toMatchObject({
      on: second,
      chosenBy: 'Marit Oland',
      isCalledOff: false,
    });
    expect(JSON.stringify({ ...shown, owed: null })).not.toContain(gallery.maker.name);
    const [answer] = await listAnswers(gallery.clerk, commissionId);
    expect(answer).toMatchObject({ name: 'Marit Oland', did: 'chose the day of the hanging' });
  });

  test('sent twice it is booked once; another of the days is refused', async () => {
    const { commissionId, doer } = await aPage();
    const { offerId } = await offered(gallery, commissionId);
    const first = choice(commissionId, offerId, 1);
    expect(await chooseDay(doer, first)).toEqual(await chooseDay(doer, first));
    const other = choice(commissionId, offerId, 2);
    expect(code(await chooseDay(doer, other))).toBe('day_chosen_already');
  });

  test('two at once: one has chosen, the other is told', async () => {
    const { commissionId, doer } = await aPage();
    const spouse = await opened(commissionId);
    const { offerId } = await offered(gallery, commissionId);
    const both = await Promise.all([
      chooseDay(doer, choice(commissionId, offerId, 1)),
      chooseDay(spouse.doer, choice(commissionId, offerId, 2)),
    ]);
    expect(both.map(code).toSorted()).toEqual(['day_chosen_already', 'done']);
  });

  test('of two commissions at once for the same hours one is booked, and the other keeps its days', async () => {
    const one = await aPage();
    const two = await aPage();
    const mine = await offered(gallery, one.commissionId);
    const theirs = await offered(gallery, two.commissionId, { sameWeek: true });
    const both = await Promise.all([
      chooseDay(one.doer, choice(one.commissionId, mine.offerId, 1)),
      chooseDay(two.doer, choice(two.commissionId, theirs.offerId, 1)),
    ]);
    expect(both.map(code).toSorted()).toEqual(['day_taken', 'done']);
    const [lost, offerId] = both[0].ok ? [two, theirs.offerId] : [one, mine.offerId];
    const [left] = await daysForCollector(lost.commissionId, how);
    expect(left?.slots.map((slot) => slot.isFree)).toEqual([false, true]);
    expect(code(await chooseDay(lost.doer, choice(lost.commissionId, offerId, 2)))).toBe('done');
  });

  test('a day given away meanwhile is refused, and nothing of it is left', async () => {
    const { commissionId, doer } = await aPage();
    const { offerId, first } = await offered(gallery, commissionId);
    done(
      await bookAppointment(on(gallery.maker, day), {
        ...{ requestKey: randomUUID(), kind: 'site_visit' as const, commissionId: null },
        ...{ day: first, from: '11:00', to: '12:00', leadId: gallery.maker.id },
        ...{ address: 'Kelp Lane', note: '', crewIds: [], travelMinutes: 0 },
        ...{ meets: '', prepares: '', fallBack: '', words: {} },
      }),
    );
    expect(code(await chooseDay(doer, choice(commissionId, offerId, 1)))).toBe('day_taken');
    const chosen = await sql('select 1 from "DayOfferChosen" where "offerId" = $1', [offerId]);
    expect(chosen).toEqual([]);
  });

  test('of days taken back none is chosen, and they are not shown any more', async () => {
    const { commissionId, doer } = await aPage();
    const { offerId } = await offered(gallery, commissionId);
    const back = { requestKey: randomUUID(), commissionId, offerId };
    done(await withdrawDays(on(gallery.maker, day), back));
    expect(code(await chooseDay(doer, choice(commissionId, offerId, 1)))).toBe('offer_withdrawn');
    expect(await daysForCollector(commissionId, how)).toEqual([]);
  });
});

describe('an address that was withdrawn after the page was opened', () => {
  test('lets no answer through, and nothing is written', async () => {
    const { commissionId, doer, linkId } = await aPage();
    const { offerId } = await offered(gallery, commissionId);
    done(await withdrawn(commissionId, linkId));
    expect(code(await chooseDay(doer, choice(commissionId, offerId, 1)))).toBe('link_shut');
    expect(await listAnswers(gallery.clerk, commissionId)).toEqual([]);
  });

  test('nor does one that ran out meanwhile, or one of another commission', async () => {
    const { commissionId, doer, link } = await aPage();
    const other = await aPage();
    const { offerId } = await offered(gallery, commissionId);
    const late: PageDoer = { ...doer, at: link.runsOutAt };
    expect(code(await chooseDay(late, choice(commissionId, offerId, 1)))).toBe('link_shut');
    const page = { ...doer.page, linkId: other.linkId };
    const borrowed = await chooseDay({ ...doer, page }, choice(commissionId, offerId, 1));
    expect(code(borrowed)).toBe('link_shut');
  });

  test('at the same moment: what withdraws it first is found, whoever began first', async () => {
    const { commissionId, doer, linkId } = await aPage();
    const { offerId } = await offered(gallery, commissionId);
    const answered = await inSession(async (session) => {
      await session.query('begin');
      await session.query('update "CollectorLink" set "withdrawnAt" = $2 where id = $1', [
        linkId,
        now,
      ]);
      const answering = chooseDay(doer, choice(commissionId, offerId, 1));
      await untilSomeoneWaits();
      await session.query('commit');
      return answering;
    });
    expect(code(answered)).toBe('link_shut');
  });

  test('many at once: each answer stands whole or not at all', async () => {
    const { commissionId, doer, linkId } = await aPage();
    const { offerId } = await offered(gallery, commissionId);
    const [answered] = await Promise.all([
      chooseDay(doer, choice(commissionId, offerId, 1)),
      withdrawn(commissionId, linkId),
    ]);
    const chosen = await sql('select 1 from "DayOfferChosen" where "offerId" = $1', [offerId]);
    expect(chosen).toHaveLength(answered.ok ? 1 : 0);
    expect(['done', 'link_shut']).toContain(code(answered));
  });
});

test('after sixty answers in an hour the next has to wait, and an hour later it goes through', async () => {
  const { commissionId, doer, linkId } = await aPage();
  const { offerId } = await offered(gallery, commissionId);
  await sql(
    `insert into "AuditLine" (at, "linkId", did, subject, "subjectId", facts)
     select $1, $2, 'looked', 'Commission', $3, '{}' from generate_series(1, 60)`,
    [now, linkId, commissionId],
  );
  const sent = choice(commissionId, offerId, 1);
  expect(code(await chooseDay(doer, sent))).toBe('too_many_answers');
  const anHourOn = { ...doer, at: new Date(now.getTime() + 3_600_001) };
  expect(code(await chooseDay(anHourOn, sent))).toBe('done');
});
