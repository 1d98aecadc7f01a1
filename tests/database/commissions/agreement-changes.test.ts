import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { offerChange } from '@/lib/commissions/writes/agreement/change';
import { withdrawChange } from '@/lib/commissions/writes/agreement/withdraw';
import { takePayment } from '@/lib/commissions/writes/money';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { ruleMetBy } from '@/tests/database/sales/rule-met';
import { startAfresh } from '@/tests/helpers/database';
import { aPayment, asked, done, on } from './a-commission';
import {
  aChange,
  agreedByProposal,
  agreedOn,
  atPage,
  changeOffered,
  code,
  signChange,
} from './an-agreement';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const owner = () => on(gallery.owner, agreedOn);

/** What is agreed now: by the facts, by the lines, and the day. */
async function agreedNow(commissionId: string) {
  const where = { id: commissionId };
  const row = await db().commission.findUniqueOrThrow({ where, select: factsSelect });
  const { agreement } = factsOf(row, 'America/Los_Angeles');
  const total = await readTotal(db(), commissionId, { on: agreedOn, roundBy: 'invoice' });
  return {
    ...{ price: agreement?.priceCents, original: agreement?.originalCents },
    ...{ lines: total?.priceCents, whole: total?.totalCents, promisedOn: agreement?.promisedOn },
  };
}

describe('writing a change order', () => {
  test('refuses in this order, and leaves nothing', async () => {
    const bare = await asked(gallery.maker, agreedOn);
    const form = aChange(bare.commissionId);
    expect(code(await offerChange(on(gallery.clerk, agreedOn), form))).toBe('not_allowed');
    expect(code(await offerChange(owner(), form))).toBe('not_agreed_yet');
    const { commissionId } = await agreedByProposal(gallery);
    const past = aChange(commissionId, {
      promisedAfter: '2026-05-03',
      way: 'less',
      amountCents: '10,000',
    });
    expect(code(await offerChange(owner(), past))).toBe('change_day_is_past');
    const all = aChange(commissionId, { way: 'less', amountCents: '10,000' });
    expect(code(await offerChange(owner(), all))).toBe('change_leaves_nothing');
    done(await takePayment(owner(), aPayment(commissionId, 540_000n)));
    const most = aChange(commissionId, { way: 'less', amountCents: '5,000.01' });
    expect(await offerChange(owner(), most)).toMatchObject({
      refusal: { code: 'change_below_paid', totalCents: 539_999n, paidCents: 540_000n },
    });
    expect(await db().changeOrder.count({ where: { commissionId } })).toBe(0);
    const just = aChange(commissionId, { way: 'less', amountCents: '5,000' });
    expect(code(await offerChange(owner(), just))).toBe('done');
  });

  test('two at once get two numbers; one sent twice is written once', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const form = aChange(commissionId);
    const [one, other] = await Promise.all([
      offerChange(owner(), form),
      offerChange(owner(), aChange(commissionId, { words: 'A darker sky' })),
    ]);
    expect([done(one).number, done(other).number].sort()).toEqual([1, 2]);
    expect(done(await offerChange(owner(), form))).toEqual(done(one));
    expect(await agreedNow(commissionId)).toMatchObject({ price: 1_000_000n });
  });
});

describe('signing a change order', () => {
  test('makes it count: what is agreed is always the original and its signed changes', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const more = await changeOffered(gallery, commissionId, { promisedAfter: '2026-11-01' });
    done(await signChange(owner(), more));
    const less = { way: 'less', amountCents: '150.50', kind: 'installation' };
    done(await signChange(owner(), await changeOffered(gallery, commissionId, less)));
    const crate = { kind: 'crate', amountCents: '80' };
    done(await signChange(owner(), await changeOffered(gallery, commissionId, crate)));
    await changeOffered(gallery, commissionId, { amountCents: '999' });
    expect(await agreedNow(commissionId)).toEqual({
      ...{ price: 1_032_950n, original: 1_000_000n, lines: 1_032_950n, whole: 1_115_586n },
      promisedOn: '2026-11-01',
    });
  });

  test('refuses in this order', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const order = await changeOffered(gallery, commissionId);
    expect(code(await signChange(on(gallery.maker, agreedOn), order))).toBe('not_allowed');
    const drawn = { ...order, signedAs: 'drawn' as const };
    expect(code(await signChange(owner(), drawn))).toBe('drawing_not_kept');
    const other = { ...order, changeOrderId: randomUUID() };
    expect(code(await signChange(owner(), other))).toBe('unknown_change');
    const changed = { ...order, contentSha256: 'c'.repeat(64) };
    expect(code(await signChange(owner(), changed))).toBe('paper_changed');
    expect(await db().signature.count({ where: { commissionId } })).toBe(1);
    done(await signChange(owner(), order));
    expect(code(await signChange(owner(), { ...order, requestKey: randomUUID() }))).toBe(
      'change_signed_already',
    );
  });

  test('the same one by two at once is signed once', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const order = await changeOffered(gallery, commissionId);
    const page = await atPage(gallery, commissionId);
    const both = await Promise.all([
      signChange(owner(), order),
      signChange(page, { ...order, requestKey: randomUUID() }),
    ]);
    expect(both.map(code).sort()).toEqual(['change_signed_already', 'done']);
    expect(await agreedNow(commissionId)).toMatchObject({ price: 1_040_000n });
  });

  test('of two that say what the price was, the second has to be written once more', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const one = await changeOffered(gallery, commissionId);
    const other = await changeOffered(gallery, commissionId, { words: 'A darker sky' });
    const both = await Promise.all([signChange(owner(), one), signChange(owner(), other)]);
    expect(both.map(code).sort()).toEqual(['change_overtaken', 'done']);
    expect(await agreedNow(commissionId)).toMatchObject({ price: 1_040_000n, lines: 1_040_000n });
  });

  test('cannot bring the whole below what was paid since it was written', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const order = await changeOffered(gallery, commissionId, { way: 'less', amountCents: '1,000' });
    done(await takePayment(owner(), aPayment(commissionId, 1_080_000n)));
    expect(await signChange(owner(), order)).toMatchObject({
      refusal: { code: 'change_below_paid', totalCents: 972_000n, paidCents: 1_080_000n },
    });
    expect(await agreedNow(commissionId)).toMatchObject({ price: 1_000_000n });
  });

  test('on their page it is theirs alone, and named by the link', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const stranger = await atPage(gallery, (await agreedByProposal(gallery)).commissionId);
    const order = await changeOffered(gallery, commissionId);
    expect(code(await signChange(stranger, order))).toBe('unknown_commission');
    const page = await atPage(gallery, commissionId);
    done(await signChange(page, { ...order, requestKey: randomUUID() }));
    const kept = await db().changeOrderSigned.findUniqueOrThrow({
      where: { changeOrderId: order.changeOrderId },
      select: { signature: { select: { linkId: true, recordedById: true } } },
    });
    expect(kept.signature).toEqual({ linkId: page.page.linkId, recordedById: null });
  });
});

describe('withdrawing a change order', () => {
  test('ends it: it is not signed afterwards, and one that is signed is not withdrawn', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const order = await changeOffered(gallery, commissionId);
    const { changeOrderId } = order;
    const form = { requestKey: randomUUID(), commissionId, changeOrderId, why: 'They let it be.' };
    done(await withdrawChange(owner(), form));
    expect(code(await signChange(owner(), order))).toBe('change_withdrawn');
    const signed = await changeOffered(gallery, commissionId);
    done(await signChange(owner(), signed));
    const late = { ...form, requestKey: randomUUID(), changeOrderId: signed.changeOrderId };
    expect(code(await withdrawChange(owner(), late))).toBe('change_signed_already');
  });

  test('and signing at once: the database lets one stand, past all our checks', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const { changeOrderId, contentSha256 } = await changeOffered(gallery, commissionId);
    const at = owner().at;
    const rule = await ruleMetBy(async (tx) => {
      const { id: signatureId } = await tx.signature.create({
        data: {
          ...{ commissionId, kind: 'typed', name: 'Marit Oland', contentSha256, at },
          recordedById: gallery.owner.id,
        },
      });
      await tx.changeOrderSigned.create({ data: { changeOrderId, signatureId, signedOn: at, at } });
      const staffId = gallery.owner.id;
      await tx.changeOrderWithdrawn.create({ data: { changeOrderId, why: 'no', staffId, at } });
    });
    expect(rule).toBe('change_order_has_one_end');
  });
});
