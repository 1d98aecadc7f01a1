import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { takePayment } from '@/lib/commissions/writes/money';
import { findWorkOrder } from '@/lib/installation/reads/work/order';
import { keepCodes } from '@/lib/installation/writes/work/codes';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { aPayment, aPicture, dayAt, done, on } from '@/tests/database/commissions/a-commission';
import { agreedOn, code } from '@/tests/database/commissions/an-agreement';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { ruleMetBy } from '@/tests/database/sales/rule-met';
import { startAfresh } from '../../helpers/database';
import {
  aPiece,
  anAppointment,
  anEntry,
  aSignature,
  aTick,
  hungOn,
  madeReady,
  send,
} from './a-day';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

async function orderOf(id: string) {
  const now = { gallery: await getGallery(), today: hungOn } as const;
  const order = await findWorkOrder(gallery.maker, id, now);
  if (!order) throw new Error('There is no such appointment.');
  return order;
}

describe('what a device kept', () => {
  test('comes in once however often it is sent, and is told by the device’s clock', async () => {
    const { maker } = gallery;
    const id = await anAppointment(gallery, await aPiece(gallery));
    const late = aTick(id, maker, 'seated', { at: '2026-05-11T21:00:00Z' });
    const last = aTick(id, maker, 'seated', { at: '2026-05-11T22:00:00Z', isDone: false });
    expect(code(await send(last, maker))).toBe('done');
    expect(code(await send(late, maker))).toBe('done');
    expect(code(await send(late, maker))).toBe('done');
    const { ticks } = await orderOf(id);
    expect(ticks.map(({ isDone, by }) => [isDone, by])).toEqual([
      [true, 'Tobias Fenn'],
      [false, 'Tobias Fenn'],
    ]);
    const other = { ...late, isDone: false } as typeof late;
    expect(code(await send(other, maker))).toBe('key_used_for_something_else');
  });

  test('counts as it came in where the device’s clock runs far ahead', async () => {
    const { maker } = gallery;
    const id = await anAppointment(gallery, null, 'after_care');
    done(await send(aTick(id, maker, 'pieces_looked', { at: '2031-01-01T00:00:00Z' }), maker));
    done(await send(aTick(id, maker, 'wall_looked', { at: '1999-01-01T00:00:00Z' }), maker));
    const { ticks } = await orderOf(id);
    expect(ticks.map(({ tickedAt }) => tickedAt)).toEqual([dayAt(agreedOn), dayAt(hungOn)]);
  });

  test('a weight and pictures are remembered with the piece, once', async () => {
    const { maker } = gallery;
    const commissionId = await aPiece(gallery);
    const id = await anAppointment(gallery, commissionId);
    expect((await orderOf(id)).weight?.from).toBe('agreement');
    const weight = anEntry(id, maker, { did: 'weigh', weightG: 45_360, words: 'With its board' });
    const picture = anEntry(id, maker, { did: 'picture', of: 'fixings' });
    const shown = await aPicture(12);
    const both = async () => {
      done(await send(weight, maker));
      done(await send(picture, maker, { picture: shown }));
    };
    await both();
    await both();
    const kept = await db().progress.findMany({ where: { commissionId }, orderBy: { id: 'asc' } });
    expect(kept.map(({ kind, weightG }) => [kind, weightG])).toEqual([
      ['weight', 45_360],
      ['fixing', null],
    ]);
    expect(await orderOf(id)).toMatchObject({
      weight: { weightG: 45_360, from: 'scale' },
      ...{ isWeighed: true, hasFixingsPicture: true, hasPictureInPlace: false },
    });
  });

  test('is refused with a reason, in order, and then leaves nothing', async () => {
    const { maker, books, second } = gallery;
    const commissionId = await aPiece(gallery);
    const id = await anAppointment(gallery, commissionId);
    const none = await anAppointment(gallery, null);
    const off = await anAppointment(gallery, commissionId);
    const calledOff = { calledOffAt: dayAt(hungOn), calledOffWhy: 'Snow on the road' };
    await db().appointment.update({ where: { id: off }, data: calledOff });
    const snag = { did: 'snag', words: 'Touch up', mendById: maker.id, mendByOn: '2026-05-20' };
    const weigh = { did: 'weigh', weightG: 5_000 } as const;
    const picture = { did: 'picture', of: 'in_place' } as const;
    const said = await Promise.all([
      send(aTick(id, books, 'seated'), books),
      send(aTick(id, second, 'seated'), maker),
      send(anEntry(id, maker, picture), maker, { picture: new Blob(['no picture']) }),
      send(anEntry(id, maker, picture), maker),
      send(aTick(randomUUID(), maker, 'seated'), maker),
      send(aTick(off, maker, 'seated'), maker),
      send(anEntry(none, maker, weigh), maker),
      send(aTick(id, maker, 'owner_word', { words: 'Let it go' }), maker),
      send(anEntry(id, maker, { ...snag, did: 'snag', mendById: randomUUID() }), maker),
      send(anEntry(id, maker, { ...snag, did: 'snag', mendByOn: '2026-05-10' }), maker),
    ]);
    expect(said.map(code)).toEqual([
      ...['not_allowed', 'somebody_else', 'picture_not_kept', 'picture_not_kept'],
      ...['no_such_order', 'order_called_off', 'no_commission_here', 'not_the_owners_word'],
      ...['unknown_mender', 'mended_before_today'],
    ]);
    expect(await db().workTick.count({ where: { appointmentId: { in: [id, off, none] } } })).toBe(
      0,
    );
    expect(await db().progress.count({ where: { commissionId } })).toBe(0);
  });

  test('is never changed, past all our checks', async () => {
    const id = await anAppointment(gallery, null);
    done(await send(aTick(id, gallery.maker, 'note', { words: 'The dog is kind' }), gallery.maker));
    const where = { appointmentId: id };
    const change = (tx: Parameters<Parameters<typeof ruleMetBy>[0]>[0]) =>
      tx.workTick.updateMany({ where, data: { isDone: false } });
    expect(await ruleMetBy(change)).toMatch(/never_changed|refuse_change/);
    expect(await ruleMetBy((tx) => tx.workTick.deleteMany({ where }))).toMatch(/never|refuse/);
  });
});

describe('the signature', () => {
  test('hands the piece over: the sale, the looks after it, and the codes struck out', async () => {
    const { maker } = gallery;
    const commissionId = await aPiece(gallery);
    const id = await anAppointment(gallery, commissionId);
    await madeReady(id, maker);
    const at = '2026-05-11T22:30:00.000Z';
    const form = await aSignature(id, maker, { at });
    const once = done(await send(form, maker));
    expect(done(await send(form, maker))).toEqual(once);
    expect(once.receiptNumber).toBeGreaterThan(0);
    const handOver = await db().handOver.findUniqueOrThrow({
      where: { commissionId },
      include: { sale: true, signature: true, appointment: true },
    });
    expect(handOver).toMatchObject({
      ...{ appointmentId: id, signedBy: 'Marit Oland', signedAt: new Date(at) },
      ...{ recordedById: maker.id, evenIfOwed: null },
      sale: { channel: 'commission', totalCents: 1_080_000n },
      signature: { name: 'Marit Oland', device: 'a telephone' },
      appointment: { codes: '' },
    });
    expect(handOver.signature?.statement).toContain('Handed over: 60 parts, counted.');
    const looks = await db().afterCare.findMany({
      where: { commissionId },
      orderBy: { dueOn: 'asc' },
    });
    expect(looks.map(({ kind }) => kind)).toEqual(['two_days', 'thirty_days', 'a_year', 'fixings']);
    expect(await orderOf(id)).toMatchObject({
      signed: { signedBy: 'Marit Oland', by: 'Tobias Fenn', at: new Date(at) },
      codes: '',
    });
  });

  test('of two devices at once one wins, and the other is told by whom and when', async () => {
    const { maker, owner } = gallery;
    const commissionId = await aPiece(gallery);
    const id = await anAppointment(gallery, commissionId);
    await madeReady(id, maker);
    const forms = [await aSignature(id, maker), await aSignature(id, owner)] as const;
    const both = await Promise.all([send(forms[0], maker), send(forms[1], owner)]);
    expect(both.map(code).sort()).toEqual(['done', 'signed_already']);
    const lost = both.find((each) => !each.ok);
    expect(lost).toMatchObject({ refusal: { signedBy: 'Marit Oland', at: dayAt(hungOn) } });
    expect(await db().handOver.count({ where: { commissionId } })).toBe(1);
    expect(await db().afterCare.count({ where: { commissionId } })).toBe(4);
  });

  test('is refused with a reason, in order, and then nothing is handed over', async () => {
    const { maker, clerk } = gallery;
    const commissionId = await aPiece(gallery);
    const visit = await anAppointment(gallery, commissionId, 'site_visit');
    const id = await anAppointment(gallery, commissionId);
    const drawn = { signedAs: 'drawn', drawing: '' };
    expect(code(await send(await aSignature(id, maker, drawn), maker))).toBe('drawing_not_kept');
    expect(code(await send(await aSignature(visit, maker), maker))).toBe('nothing_to_hand_over');
    expect(code(await send(await aSignature(id, clerk), clerk))).toBe('not_of_the_crew');
    const early = await send(await aSignature(id, maker), maker);
    expect(early).toMatchObject({
      refusal: { code: 'still_missing', missing: ['weight', 'no_plan', 'fixings_picture'] },
    });
    await madeReady(id, maker);
    const other = await aSignature(id, maker, { fixings: 'Nails' });
    expect(code(await send(other, maker))).toBe('words_changed');
    expect(await db().handOver.count({ where: { commissionId } })).toBe(0);
    expect(code(await send(await aSignature(id, maker), maker))).toBe('done');
  });

  test('waits for the owner’s word while something is owed; the amount is told to nobody', async () => {
    const { maker, owner } = gallery;
    const commissionId = await aPiece(gallery, false);
    const id = await anAppointment(gallery, commissionId);
    await madeReady(id, maker);
    const form = await aSignature(id, maker);
    expect((await orderOf(id)).needsOwner).toBe(true);
    const refused = await send(form, maker);
    expect(code(refused)).toBe('owner_says_first');
    expect(JSON.stringify(refused)).not.toContain('Cents');
    const words = 'They bring a cheque on Friday';
    done(await send(aTick(id, owner, 'owner_word', { words }), owner));
    expect((await orderOf(id)).needsOwner).toBe(false);
    done(await send(form, maker));
    const kept = await db().handOver.findUniqueOrThrow({ where: { commissionId } });
    expect(kept.evenIfOwed).toBe(words);
  });

  test('that comes in days later counts from the last payment on, and keeps its own day', async () => {
    const { maker, owner } = gallery;
    const commissionId = await aPiece(gallery, false);
    const id = await anAppointment(gallery, commissionId);
    await madeReady(id, maker);
    const form = await aSignature(id, maker);
    done(await takePayment(on(owner, '2026-05-12'), aPayment(commissionId, 1_080_000n)));
    done(await send(form, maker, { at: dayAt('2026-05-13') }));
    const kept = await db().handOver.findUniqueOrThrow({
      where: { commissionId },
      include: { signature: true },
    });
    expect(kept.handedOn).toEqual(new Date('2026-05-12'));
    expect(kept.signedAt).toEqual(dayAt(hungOn));
    expect(kept.signature?.statement).toContain('Monday 11 May 2026');
  });
});

test('codes of doors are kept for the day alone, and nothing of them in the history', async () => {
  const { maker, books } = gallery;
  const appointmentId = await anAppointment(gallery, await aPiece(gallery));
  const form = (codes: string) => ({ requestKey: randomUUID(), appointmentId, codes });
  expect(code(await keepCodes(on(books, hungOn), form('1')))).toBe('not_allowed');
  done(await keepCodes(on(maker, hungOn), form('0815 at the side door')));
  expect((await orderOf(appointmentId)).codes).toBe('0815 at the side door');
  const history = await db().auditLine.findMany({ where: { subjectId: appointmentId } });
  expect(history).toHaveLength(1);
  expect(JSON.stringify(history.map(({ did, facts }) => ({ did, facts })))).not.toContain('0815');
  await madeReady(appointmentId, maker);
  done(await send(await aSignature(appointmentId, maker), maker));
  expect(code(await keepCodes(on(maker, hungOn), form('0815')))).toBe('codes_are_struck_out');
});
