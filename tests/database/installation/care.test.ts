import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { handOver } from '@/lib/commissions/writes/hand-over';
import { careDoneInput } from '@/lib/installation/input/care/done';
import type { MendSnagInput } from '@/lib/installation/input/work/snags';
import { countLooksDue, listLooksDue, listLooksOf } from '@/lib/installation/reads/care/looks';
import { countSnagsOverdue, listSnagsOf, listSnagsOpen } from '@/lib/installation/reads/work/snags';
import { careDone } from '@/lib/installation/writes/care/done';
import { setLooks } from '@/lib/installation/writes/care/set-looks';
import { mendSnag, writeSnag } from '@/lib/installation/writes/work/snags';
import { db } from '@/lib/platform/db/client';
import { dayAt, done, on } from '@/tests/database/commissions/a-commission';
import { code } from '@/tests/database/commissions/an-agreement';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { ruleMetBy } from '@/tests/database/sales/rule-met';
import { startAfresh } from '../../helpers/database';
import { aPiece, anAppointment, anEntry, aSignature, hungOn, madeReady, send } from './a-day';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const maker = (day: `${number}-${number}-${number}` = hungOn) => on(gallery.maker, day);

function aSnag(commissionId: string, more: object = {}) {
  const base = { requestKey: randomUUID(), commissionId, words: 'Touch up the lower left' };
  return { ...base, mendById: gallery.maker.id, mendByOn: '2026-05-20' as const, ...more };
}

describe('a snag', () => {
  test('is written once, is overdue after its day, and is put right once', async () => {
    const commissionId = await aPiece(gallery);
    const form = aSnag(commissionId);
    const told = done(await writeSnag(maker(), form));
    expect(done(await writeSnag(maker(), form))).toEqual(told);
    expect(await countSnagsOverdue(gallery.maker, '2026-05-20')).toBe(0);
    expect(await countSnagsOverdue(gallery.maker, '2026-05-21')).toBe(1);
    const [open] = await listSnagsOpen(gallery.maker);
    expect(open).toMatchObject({ mendBy: 'Tobias Fenn', mendByOn: '2026-05-20', mended: null });

    const mend = (fields: object = {}): MendSnagInput => ({
      ...{ requestKey: randomUUID(), snagId: told.snagId, words: 'Two coats', on: hungOn },
      ...fields,
    });
    expect(code(await mendSnag(on(gallery.books, hungOn), mend()))).toBe('not_allowed');
    expect(code(await mendSnag(maker(), mend({ snagId: randomUUID() })))).toBe('unknown_snag');
    expect(code(await mendSnag(maker(), mend({ on: '2026-05-12' })))).toBe('day_to_come');
    const both = await Promise.all([mendSnag(maker(), mend()), mendSnag(maker(), mend())]);
    expect(both.map(code).sort()).toEqual(['done', 'mended_already']);
    expect(await listSnagsOf(gallery.maker, commissionId)).toMatchObject([
      { mended: { on: hungOn, words: 'Two coats' } },
    ]);
    expect(await countSnagsOverdue(gallery.maker, '2026-05-21')).toBe(0);
  });

  test('from a device is told with the day it came from', async () => {
    const commissionId = await aPiece(gallery);
    const id = await anAppointment(gallery, commissionId);
    const words = 'A scratch on the wall';
    const what = { words, mendById: gallery.clerk.id, mendByOn: '2026-05-12' };
    const entry = anEntry(id, gallery.maker, { did: 'snag', ...what });
    done(await send(entry, gallery.maker));
    done(await send(entry, gallery.maker));
    expect(await db().snag.findMany({ where: { appointmentId: id } })).toMatchObject([{ words }]);
    const late = anEntry(id, gallery.maker, { did: 'snag', ...what, words: 'Sent days later' });
    done(await send(late, gallery.maker, { at: dayAt('2026-05-16') }));
    expect(await countSnagsOverdue(gallery.maker, '2026-05-16')).toBe(2);
  });

  test('is refused with a reason, and cannot be unwritten', async () => {
    const commissionId = await aPiece(gallery);
    const refused = await Promise.all([
      writeSnag(on(gallery.books, hungOn), aSnag(commissionId)),
      writeSnag(maker(), aSnag(randomUUID())),
      writeSnag(maker(), aSnag(commissionId, { mendById: randomUUID() })),
      writeSnag(maker(), aSnag(commissionId, { mendByOn: '2026-05-10' })),
    ]);
    expect(refused.map(code)).toEqual([
      ...['not_allowed', 'unknown_commission', 'unknown_mender', 'mended_before_today'],
    ]);
    done(await writeSnag(maker(), aSnag(commissionId)));
    const where = { commissionId };
    expect(await ruleMetBy((tx) => tx.snag.deleteMany({ where }))).toMatch(/never|refuse/);
    const data = { words: 'Nothing' };
    expect(await ruleMetBy((tx) => tx.snag.updateMany({ where, data }))).toMatch(/never|refuse/);
  });
});

describe('a look after a piece', () => {
  test('is due on its day, and is done once, by a call or on a visit', async () => {
    const commissionId = await aPiece(gallery);
    const id = await anAppointment(gallery, commissionId);
    await madeReady(id, gallery.maker);
    done(await send(await aSignature(id, gallery.maker), gallery.maker));
    expect(await countLooksDue(gallery.maker, '2026-05-12')).toBe(0);
    expect(await countLooksDue(gallery.maker, '2026-05-13')).toBe(1);
    const [look] = await listLooksDue(gallery.maker, '2026-05-13');
    expect(look).toMatchObject({ kind: 'two_days', collector: { name: 'Marit Oland' } });

    const visit = await anAppointment(gallery, commissionId, 'after_care');
    const form = (fields: object = {}) =>
      careDoneInput.parse({
        ...{ requestKey: randomUUID(), afterCareId: look?.id, words: 'All well' },
        ...{ on: '2026-05-13', appointmentId: visit, ...fields },
      });
    const day = '2026-05-13';
    expect(code(await careDone(on(gallery.books, day), form()))).toBe('not_allowed');
    expect(code(await careDone(maker(day), form({ afterCareId: visit })))).toBe('unknown_care');
    expect(code(await careDone(maker(day), form({ on: '2026-05-14' })))).toBe('day_to_come');
    expect(code(await careDone(maker(day), form({ on: '2026-05-10' })))).toBe('before_hand_over');
    const nowhere = form({ appointmentId: look?.id });
    expect(code(await careDone(maker(day), nowhere))).toBe('unknown_visit');
    const both = await Promise.all([careDone(maker(day), form()), careDone(maker(day), form())]);
    expect(both.map(code).sort()).toEqual(['done', 'looked_after_already']);
    expect(await countLooksDue(gallery.maker, day)).toBe(0);
    expect((await listLooksOf(gallery.maker, commissionId))[0]?.done).toMatchObject({
      ...{ on: day, words: 'All well', appointmentId: visit },
    });
  });

  test('is set by hand where it was handed over without a work order, once', async () => {
    const commissionId = await aPiece(gallery);
    const form = () => ({ requestKey: randomUUID(), commissionId, hangs: 'yes' as const });
    expect(code(await setLooks(on(gallery.books, hungOn), form()))).toBe('not_allowed');
    const nobodys = { ...form(), commissionId: randomUUID() };
    expect(code(await setLooks(maker(), nobodys))).toBe('unknown_commission');
    expect(code(await setLooks(maker(), form()))).toBe('not_handed_over_yet');
    const signed = { requestKey: randomUUID(), commissionId, signedBy: 'Marit Oland' };
    const handed = { ...signed, handedOn: hungOn, remarks: '', evenIfOwed: null } as const;
    done(await handOver(on(gallery.owner, hungOn), handed));
    const both = await Promise.all([setLooks(maker(), form()), setLooks(maker(), form())]);
    expect(both.map(code).sort()).toEqual(['done', 'looks_are_set']);
    const looks = await listLooksOf(gallery.maker, commissionId);
    expect(looks.map(({ kind }) => kind)).toEqual(['two_days', 'thirty_days', 'a_year', 'fixings']);
  });

  test('is set once of each kind, past all our checks', async () => {
    const commissionId = await aPiece(gallery);
    const data = { commissionId, kind: 'a_year', dueOn: new Date('2027-05-11') } as const;
    const rule = await ruleMetBy(async (tx) => {
      await tx.afterCare.create({ data: { ...data, at: new Date('2026-05-11') } });
      await tx.afterCare.create({ data: { ...data, at: new Date('2026-05-11') } });
    });
    expect(rule).toMatch(/AfterCare_commissionId_kind_key/);
  });
});
