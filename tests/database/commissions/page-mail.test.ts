import { randomUUID } from 'node:crypto';
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { sendLetterInput } from '@/lib/commissions/input/page/letter';
import { listLinks, listMails } from '@/lib/commissions/reads/page/links';
import { openLink } from '@/lib/commissions/reads/page/open-link';
import { sendLetter } from '@/lib/commissions/writes/page/letter';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { sendMail, type Letter } from '@/lib/platform/mail';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { asked, dayAt, done, on } from './a-commission';
import { openPostHouse, type PostHouse } from './a-post-house';

let gallery: OpenGallery;
let house: PostHouse;
const day: Day = '2026-05-12';
const now = dayAt(day);
const patience = { connectionMs: 400, greetingMs: 400, socketMs: 400 };
const origin = 'https://gallery.example';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  await db().gallery.update({ where: { id: 1 }, data: { email: 'post@tidewrack.example' } });
});
beforeEach(async () => {
  house = await openPostHouse();
});
afterEach(() => house.close());

const letter: Letter = {
  toName: 'Marit Oland',
  toAddress: 'marit@fernhollow.example',
  subject: 'Your page for Herons',
  words: 'Dear Marit,\n\nit dries.\n',
  from: { name: 'Tidewrack Clay', address: 'post@tidewrack.example' },
};

const send = (each: Letter) => sendMail(each, house.url, patience);
const through = { origin, send, isSetUp: () => true };

function code(result: { ok: true } | { ok: false; refusal: { code: string } }): string {
  return result.ok ? 'done' : result.refusal.code;
}

function aLetter(commissionId: string, more: Record<string, unknown> = {}) {
  return sendLetterInput.parse({
    ...{ requestKey: randomUUID(), commissionId, toName: letter.toName, words: letter.words },
    ...{ toAddress: letter.toAddress, subject: letter.subject, ...more },
  });
}

describe('a mail server', () => {
  test('takes a letter to one address, from the gallery, in plain words', async () => {
    expect(code(await send(letter))).toBe('done');
    const [mail] = house.taken;
    expect(mail?.to).toEqual(['marit@fernhollow.example']);
    expect(mail?.text).toContain('From: Tidewrack Clay <post@tidewrack.example>');
    expect(mail?.text).toContain('To: Marit Oland <marit@fernhollow.example>');
    expect(mail?.text).toContain('it dries.');
  });

  test.each([
    ['the subject', { subject: 'Herons\r\nBcc: all@fernhollow.example\r\n\r\nother words' }],
    ['the name', { toName: 'Marit\r\nBcc: all@fernhollow.example' }],
    ['the gallery’s name', { from: { ...letter.from, name: 'T\nBcc: all@fernhollow.example' } }],
  ])('gets nobody added by a line end in %s', async (_name, more) => {
    expect(code(await send({ ...letter, ...more }))).toBe('done');
    const [mail] = house.taken;
    expect(mail?.to).toEqual(['marit@fernhollow.example']);
    expect(mail?.text.split('\r\n\r\n')[0]).not.toMatch(/^Bcc:/im);
  });

  test('is not even asked where the address holds a second one', async () => {
    const two = { ...letter, toAddress: 'marit@fernhollow.example\r\nBcc: all@fernhollow.example' };
    expect(code(await send(two))).toBe('not_sent');
    expect(house.taken).toEqual([]);
  });

  test.each([
    ['does not take letters to that address', 'refuses', /does not take letters to that address/],
    ['takes too long', 'sleeps', /took too long|was not reached/],
    ['is down', 'is_down', /was not reached/],
  ] as const)('that %s is told in words', async (_name, mood, words) => {
    await house.become(mood);
    const sent = await send(letter);
    expect(sent.ok ? '' : sent.refusal.why).toMatch(words);
  });

  test('that is not set up is told', async () => {
    expect(code(await sendMail(letter, undefined, patience))).toBe('not_set_up');
  });
});

describe('a letter about a commission', () => {
  test('brings an address that opens the page, and keeps it nowhere', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const sent = aLetter(commissionId, { withAddress: 'yes' });
    expect(done(await sendLetter(on(gallery.clerk, day), sent, through)).failure).toBeNull();
    const token = house.words().match(/\/c\/([A-Za-z0-9_-]{43})/)?.[1] ?? '';
    expect((await openLink(token, now))?.commissionId).toBe(commissionId);
    const [mail] = await listMails(gallery.clerk, commissionId);
    expect(mail).toMatchObject({
      toAddress: letter.toAddress,
      by: gallery.clerk.name,
      failure: null,
    });
    expect(mail?.sentAt).toEqual(now);
    expect(JSON.stringify(mail)).not.toContain(token);
  });

  test('sent twice, and twice at once, goes out once', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const sent = aLetter(commissionId, { withAddress: 'yes' });
    const doer = on(gallery.clerk, day);
    await Promise.all([sendLetter(doer, sent, through), sendLetter(doer, sent, through)]);
    const again = done(await sendLetter(doer, sent, through));
    expect(again).toMatchObject({ failure: null, isOnItsWay: false });
    expect(house.taken).toHaveLength(1);
    expect(await listLinks(gallery.clerk, commissionId, now)).toHaveLength(1);
  });

  test('that failed is kept with the reason in words', async () => {
    await house.become('refuses');
    const { commissionId } = await asked(gallery.maker, day);
    const sent = done(await sendLetter(on(gallery.clerk, day), aLetter(commissionId), through));
    expect(sent.failure).toMatch(/does not take letters/);
    const [mail] = await listMails(gallery.clerk, commissionId);
    expect(mail).toMatchObject({ sentAt: null, failure: sent.failure });
  });

  test('does not go by itself to somebody who said no; asked for, it goes', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const { collectorId } = await db().commission.findUniqueOrThrow({
      where: { id: commissionId },
    });
    const said = { collectorId, staffId: gallery.clerk.id, how: 'at the counter', at: now };
    const saidOn = new Date('2026-05-01');
    await db().consent.create({ data: { ...said, to: 'email', given: false, saidOn } });
    const doer = on(gallery.clerk, day);
    const letterTo = aLetter(commissionId, { withAddress: 'yes' });
    expect(code(await sendLetter(doer, letterTo, through))).toBe('wants_no_letters');
    expect(await listLinks(gallery.clerk, commissionId, now)).toEqual([]);
    expect(await listMails(gallery.clerk, commissionId)).toEqual([]);
    expect(house.taken).toEqual([]);
    const all = aLetter(commissionId, { allTheSame: 'yes' });
    expect(code(await sendLetter(doer, all, through))).toBe('done');
    expect(house.taken).toHaveLength(1);
  });

  test('is refused where no mail server is set up, and to those who see no money', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const nowhere = { ...through, isSetUp: () => false };
    const none = await sendLetter(on(gallery.clerk, day), aLetter(commissionId), nowhere);
    expect(code(none)).toBe('mail_not_set_up');
    const maker = await sendLetter(on(gallery.maker, day), aLetter(commissionId), through);
    expect(code(maker)).toBe('not_allowed');
    expect(house.taken).toEqual([]);
  });
});
