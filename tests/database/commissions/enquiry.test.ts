import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { keepBodyInput } from '@/lib/commissions/input/enquiry/body';
import { changeRequestInput } from '@/lib/commissions/input/request';
import { referralOf } from '@/lib/commissions/reads/enquiry/referral';
import { requestOf, requestSelect } from '@/lib/commissions/reads/enquiry/request';
import { keepBody } from '@/lib/commissions/writes/enquiry/body';
import { showColourTile } from '@/lib/commissions/writes/colours/show';
import { addPictures, changeRequest, logCommission } from '@/lib/commissions/writes/request';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { agreed, aPicture, aRequest, asked, done, on } from './a-commission';

const day = '2026-05-04';
let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  await asked(gallery.maker, day, { title: 'Old ones', newName: 'Bryn Calloway' });
  await asked(gallery.maker, day, { title: 'Older ones', newName: 'Bryn Calder' });
});

function aChange(commissionId: string, fields: Record<string, unknown>) {
  return changeRequestInput.parse({
    ...{ requestKey: randomUUID(), commissionId, title: 'Herons for the stair', ...fields },
  });
}

function aBody(fields: Record<string, unknown>) {
  return keepBodyInput.parse({ requestKey: randomUUID(), ...fields });
}

async function told(commissionId: string) {
  const where = { id: commissionId };
  return requestOf(await db().commission.findUniqueOrThrow({ where, select: requestSelect }));
}

async function count(table: string): Promise<unknown> {
  return (await sql(`select count(*)::int as n from "${table}"`))[0];
}

const settled = { asksReferral: 'yes', broughtLetters: 'Bryn Calloway', broughtPercent: '10' };

describe('a request', () => {
  test('keeps everything that was said, and what was not as not known yet', async () => {
    const body = done(await keepBody(on(gallery.owner, day), aBody({ name: 'Shore white' })));
    const said = {
      ...{ decides: 'Both of them', pays: 'Marit', wallOwner: 'A landlord', foundUs: 'The fair' },
      ...{ freezes: 'yes', sun: 'full', forFood: 'no', hangHeightUm: '58 in', access: 'By boat' },
      ...{ wishedOn: '2026-11-01', wishedWhy: 'A wedding', isDeadline: 'yes' },
      ...{ bodyId: body.bodyId, ...settled, broughtKnown: 'no' },
    };
    const { commissionId } = await asked(gallery.maker, day, said);
    expect(await told(commissionId)).toMatchObject({
      ...{ decides: 'Both of them', pays: 'Marit', wallOwner: 'A landlord', foundUs: 'The fair' },
      ...{ freezes: true, sun: 'full', forFood: false, hangHeightUm: 1_473_200 },
      ...{ access: 'By boat', wishedOn: '2026-11-01', wishedWhy: 'A wedding', isDeadline: true },
      ...{ body: { name: 'Shore white', absorptionPercent: null }, broughtPercent: '10' },
      ...{ broughtBy: { name: 'Bryn Calloway' }, broughtKnown: false, wall: null },
    });
    const bare = await asked(gallery.maker, day);
    expect(await told(bare.commissionId)).toMatchObject({
      ...{ decides: null, freezes: null, sun: null, body: null, broughtPercent: null },
    });
  });

  test.each([
    ['nobody like these letters', { broughtLetters: 'Zzz' }, 'brought_unknown'],
    ['more than one', { broughtLetters: 'bryn' }, 'brought_several'],
    ['a clay body nobody knows', { bodyId: randomUUID() }, 'unknown_body'],
  ])('%s refuses it, and nothing is left of it', async (_label, fields, code) => {
    const before = [await count('Commission'), await count('Collector'), await count('AuditLine')];
    const request = aRequest({ asksReferral: 'yes', newName: 'Odile Farrant', ...fields });
    const refused = await logCommission(on(gallery.maker, day), request);
    expect(refused).toMatchObject({ ok: false, refusal: { code } });
    expect([await count('Commission'), await count('Collector'), await count('AuditLine')]).toEqual(
      before,
    );
  });

  test('of a broken picture among sound ones nothing is kept', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const before = [await count('StoredFile'), await count('CommissionPicture')];
    const whole = await aPicture(77);
    const half = whole.slice(0, Math.floor(whole.size / 2));
    const pictures = [whole, half];
    const adding = { requestKey: randomUUID(), commissionId, caption: '', pictures };
    expect(await addPictures(on(gallery.maker, day), adding)).toMatchObject({
      refusal: { code: 'picture_not_kept', picture: { code: 'picture_damaged' } },
    });
    expect([await count('StoredFile'), await count('CommissionPicture')]).toEqual(before);
  });
});

describe('who brought them', () => {
  test('the one who asks cannot have brought themselves', async () => {
    const { commissionId } = await asked(gallery.maker, day, { newName: 'Ottoline Frey' });
    const own = aChange(commissionId, { ...settled, broughtLetters: 'ottoline' });
    expect(await changeRequest(on(gallery.maker, day), own)).toMatchObject({
      refusal: { code: 'brought_by_themselves', name: 'Ottoline Frey' },
    });
  });

  test('is settled before it is agreed by anybody, and after it by the owner alone', async () => {
    const { commissionId } = await asked(gallery.maker, day, settled);
    const more = aChange(commissionId, { ...settled, broughtPercent: '12.5' });
    done(await changeRequest(on(gallery.maker, day), more));
    await agreed(gallery, { commissionId, day, priceCents: 900_000n, depositCents: 100_000n });
    const less = { ...settled, broughtPercent: '5' };
    expect(await changeRequest(on(gallery.clerk, day), aChange(commissionId, less))).toMatchObject({
      refusal: { code: 'referral_settled' },
    });
    // The same once more, and a form that does not ask, are no change.
    const same = aChange(commissionId, { ...settled, broughtPercent: '12.50', decides: 'Marit' });
    done(await changeRequest(on(gallery.clerk, day), same));
    done(await changeRequest(on(gallery.clerk, day), aChange(commissionId, { pays: 'Marit' })));
    expect(await told(commissionId)).toMatchObject({ broughtPercent: '12.5', pays: 'Marit' });
    done(await changeRequest(on(gallery.owner, day), aChange(commissionId, less)));
    expect(await told(commissionId)).toMatchObject({ broughtPercent: '5' });
    const lines = await db().auditLine.findMany({
      where: { subjectId: commissionId, did: 'settled who brought them' },
    });
    expect(lines).toHaveLength(3);
  });

  test('the fee is of the one who brought them, and none of 0 or of nobody', async () => {
    const { commissionId } = await asked(gallery.maker, day, settled);
    const collector = await db().collector.findFirstOrThrow({ where: { name: 'Bryn Calloway' } });
    const referral = await referralOf(db(), commissionId);
    expect(referral).toEqual({ collectorId: collector.id, percent: '10' });
    const none = aChange(commissionId, { ...settled, broughtPercent: '0' });
    done(await changeRequest(on(gallery.maker, day), none));
    expect(await referralOf(db(), commissionId)).toBeNull();
    expect(await referralOf(db(), randomUUID())).toBeNull();
  });

  test('the database refuses a share above all of it', async () => {
    const write = sql('update "Commission" set "broughtPercent" = 100.01');
    await expect(write).rejects.toThrow('referral_share_is_a_share');
  });
});

describe('a clay body', () => {
  test('is changed, and its name is its own', async () => {
    const kept = done(
      await keepBody(on(gallery.clerk, day), aBody({ name: 'Kelp buff', absorptionPercent: '3' })),
    );
    const again = aBody({ name: 'kelp BUFF' });
    expect(await keepBody(on(gallery.clerk, day), again)).toMatchObject({
      refusal: { code: 'body_is_there' },
    });
    const fields = { bodyId: kept.bodyId, name: 'Kelp buff', frostTested: 'yes' };
    done(await keepBody(on(gallery.clerk, day), aBody(fields)));
    expect(await db().clayBody.findUnique({ where: { id: kept.bodyId } })).toMatchObject({
      ...{ absorptionPercent: null, frostTested: true },
    });
    const lost = aBody({ bodyId: randomUUID(), name: 'Lost' });
    expect(await keepBody(on(gallery.owner, day), lost)).toMatchObject({
      refusal: { code: 'unknown_body' },
    });
    expect(await keepBody(on(gallery.maker, day), aBody({ name: 'Mine' }))).toMatchObject({
      refusal: { code: 'not_allowed', permission: 'catalogue.keep' },
    });
  });

  test('that a shown tile names keeps its name; what is known of it may change', async () => {
    const { bodyId } = done(
      await keepBody(
        on(gallery.clerk, day),
        aBody({ name: 'Otter brown', absorptionPercent: '3' }),
      ),
    );
    const renamed = (name: string) => aBody({ bodyId, name, absorptionPercent: '4' });
    done(await keepBody(on(gallery.clerk, day), renamed('Otter buff')));
    const { commissionId } = await asked(gallery.maker, day);
    const tile = { requestKey: randomUUID(), commissionId, picture: await aPicture(70), bodyId };
    done(await showColourTile(on(gallery.maker, day), { ...tile, glazes: 'moss', shownOn: day }));
    expect(await keepBody(on(gallery.clerk, day), renamed('Otter red'))).toMatchObject({
      refusal: { code: 'body_is_on_tiles', name: 'Otter buff' },
    });
    done(await keepBody(on(gallery.clerk, day), renamed('Otter buff')));
  });

  test('sent twice, and two at once, it is written down once', async () => {
    const body = aBody({ name: 'Tern grey' });
    const sent = await Promise.all([1, 2].map(() => keepBody(on(gallery.owner, day), body)));
    expect(sent[0]).toEqual(sent[1]);
    const both = await Promise.all(
      [1, 2].map(() => keepBody(on(gallery.owner, day), aBody({ name: 'Fern red' }))),
    );
    expect(both.filter((kept) => kept.ok)).toHaveLength(1);
    const names = await db().clayBody.findMany({
      where: { name: { in: ['Tern grey', 'Fern red'] } },
    });
    expect(names).toHaveLength(2);
  });

  test('the database refuses a measure that cannot be', async () => {
    const write = sql('update "ClayBody" set "absorptionPercent" = 41');
    await expect(write).rejects.toThrow('clay_body_is_measured');
  });
});
