import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { signHandOverInput } from '@/lib/commissions/input/agreement/hand-over';
import { keepTaxRuleInput } from '@/lib/commissions/input/agreement/tax-rule';
import { askForChangesInput } from '@/lib/commissions/input/colours/showing';
import { findHandOverPaper } from '@/lib/commissions/reads/agreement/hand-over-for';
import { findTaxLooked } from '@/lib/commissions/reads/agreement/tax-rules';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { sha256Of } from '@/lib/commissions/reads/content';
import { keepTaxRule } from '@/lib/commissions/writes/agreement/tax-rule';
import { writeBatch } from '@/lib/commissions/writes/colours/batches';
import { askForChanges } from '@/lib/commissions/writes/colours/changes';
import { releaseBatch } from '@/lib/commissions/writes/colours/release';
import { showColourTile } from '@/lib/commissions/writes/colours/show';
import { endCommission } from '@/lib/commissions/writes/end';
import { handOver } from '@/lib/commissions/writes/hand-over';
import { takePayment } from '@/lib/commissions/writes/money';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { ruleMetBy } from '@/tests/database/sales/rule-met';
import { startAfresh } from '@/tests/helpers/database';
import { aPayment, aPicture, asked, done, on, sketched } from './a-commission';
import { agreedByProposal, agreedOn, code } from './an-agreement';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const owner = () => on(gallery.owner, agreedOn);
const maker = () => on(gallery.maker, agreedOn);

/** A commission that is agreed and paid. */
async function paidFor(): Promise<string> {
  const { commissionId } = await agreedByProposal(gallery);
  done(await takePayment(owner(), aPayment(commissionId, 1_080_000n)));
  return commissionId;
}

function aHandOver(commissionId: string, fields: Record<string, unknown> = {}) {
  return signHandOverInput.parse({
    ...{ requestKey: randomUUID(), commissionId, handedOn: agreedOn, parts: '60' },
    ...{ fixings: 'Two cleats into the studs', careGiven: 'yes', remarks: 'A chip, lower left' },
    ...{
      signedName: 'Ilse Oland',
      signedCapacity: 'for Marit Oland',
      signedAs: 'typed',
      ...fields,
    },
  });
}

/** A bucket of glaze that a tile of the commission was fired from. */
async function bucketFor(commissionId: string): Promise<string> {
  const { batchId } = done(await aBucket());
  done(await tileFrom(commissionId, batchId));
  return batchId;
}

async function aBucket() {
  const number = `B-${randomUUID().slice(0, 6)}`;
  const bucket = { number, glaze: 'celadon', mixedOn: agreedOn, weightG: null, note: '' } as const;
  return writeBatch(maker(), { requestKey: randomUUID(), ...bucket });
}

async function tileFrom(commissionId: string, batchId: string) {
  return showColourTile(maker(), {
    ...{ requestKey: randomUUID(), commissionId, picture: await aPicture(60), batchId },
    ...{ glazes: 'celadon', shownOn: agreedOn },
  });
}

async function isKept(batchId: string): Promise<boolean> {
  return (await db().glazeReservation.count({ where: { batchId, releasedAt: null } })) > 0;
}

describe('the hand-over', () => {
  test('is signed under what was handed over, kept word for word', async () => {
    const commissionId = await paidFor();
    const form = aHandOver(commissionId);
    const once = done(await handOver(owner(), form, 'a telephone'));
    expect(done(await handOver(owner(), form, 'a telephone'))).toEqual(once);
    const { handed } = await findHandOverPaper(gallery.maker, commissionId);
    expect(handed).toMatchObject({
      ...{ handedOn: agreedOn, signedBy: 'Ilse Oland' },
      signature: { name: 'Ilse Oland', capacity: 'for Marit Oland', kind: 'typed' },
    });
    expect(handed?.body).toContain('Handed over: 60 parts, counted.');
    expect(handed?.body).toContain('Remarks: A chip, lower left');
    expect(handed?.contentSha256).toBe(sha256Of(handed?.body ?? ''));
    expect(await db().signature.count({ where: { commissionId } })).toBe(2);
  });

  test('a signature that cannot be read, or a refusal, leaves nothing', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const drawn = aHandOver(commissionId, { signedAs: 'drawn' });
    expect(code(await handOver(owner(), drawn))).toBe('drawing_not_kept');
    expect(code(await handOver(owner(), aHandOver(commissionId)))).toBe('balance_still_owed');
    const where = { commissionId };
    expect(await db().signature.count({ where })).toBe(1);
    expect(await findHandOverPaper(gallery.owner, commissionId)).toMatchObject({ handed: null });
  });

  test('the name under it is never changed, past all our checks', async () => {
    const commissionId = await paidFor();
    done(await handOver(owner(), aHandOver(commissionId)));
    const rule = await ruleMetBy((tx) =>
      tx.signature.updateMany({ where: { commissionId }, data: { name: 'Somebody else' } }),
    );
    expect(rule).toMatch(/never_changed|refuse_change/);
  });
});

describe('a bucket of glaze', () => {
  test('is let go with the hand-over, and another commission can have it', async () => {
    const commissionId = await paidFor();
    const batchId = await bucketFor(commissionId);
    expect(await isKept(batchId)).toBe(true);
    done(await handOver(owner(), aHandOver(commissionId)));
    expect(await isKept(batchId)).toBe(false);
    const next = await asked(gallery.maker, agreedOn);
    expect(code(await tileFrom(next.commissionId, batchId))).toBe('done');
  });

  test('is let go when it ends early', async () => {
    const { commissionId } = await asked(gallery.maker, agreedOn);
    const batchId = await bucketFor(commissionId);
    const requestKey = randomUUID();
    const why = 'They moved.';
    done(await endCommission(owner(), { requestKey, commissionId, why, endedOn: agreedOn }));
    expect(await isKept(batchId)).toBe(false);
  });

  test('is let go by hand with a reason, once, and not by whoever does not make', async () => {
    const { commissionId } = await asked(gallery.maker, agreedOn);
    const batchId = await bucketFor(commissionId);
    const form = () => ({ requestKey: randomUUID(), batchId, why: 'It dried out.' });
    expect(code(await releaseBatch(on(gallery.books, agreedOn), form()))).toBe('not_allowed');
    const unknown = { ...form(), batchId: randomUUID() };
    expect(code(await releaseBatch(maker(), unknown))).toBe('unknown_batch');
    const both = await Promise.all([releaseBatch(maker(), form()), releaseBatch(owner(), form())]);
    expect(both.map(code).sort()).toEqual(['batch_kept_for_nobody', 'done']);
    expect(await isKept(batchId)).toBe(false);
  });
});

describe('a further round that is asked for before the gallery', () => {
  test('is signed as it is signed there', async () => {
    const { commissionId } = await agreedByProposal(gallery, { roundsIncluded: '0' });
    const sketch = await sketched(gallery.maker, commissionId, agreedOn);
    const ask = (fields: Record<string, unknown>) =>
      askForChanges(
        owner(),
        askForChangesInput.parse({
          ...{ requestKey: randomUUID(), commissionId, what: 'sketch', shownId: sketch.id },
          ...{ contentSha256: sketch.contentSha256, words: 'Lower', askedBy: 'Marit Oland' },
          ...{ how: 'by_mail', ...fields },
        }),
      );
    expect(code(await ask({}))).toBe('round_costs');
    expect(code(await ask({ agreesFee: 'yes' }))).toBe('round_not_signed');
    const drawn = { signedName: 'Marit Oland', signedAs: 'drawn' };
    expect(code(await ask({ agreesFee: 'yes', ...drawn }))).toBe('drawing_not_kept');
    expect(await db().changeAsked.count({ where: { commissionId } })).toBe(0);
    const onPaper = { signedName: 'Marit Oland', signedAs: 'on_paper' };
    expect(code(await ask({ agreesFee: 'yes', ...onPaper }))).toBe('done');
    const order = await db().changeOrder.findFirstOrThrow({
      where: { commissionId },
      select: { priceCents: true, signed: { select: { signature: { select: { kind: true } } } } },
    });
    expect(order).toEqual({ priceCents: 15_000n, signed: { signature: { kind: 'on_paper' } } });
  });
});

describe('what a state says of a commission', () => {
  const aRule = (fields: Record<string, unknown> = {}) =>
    keepTaxRuleInput.parse({
      ...{ requestKey: randomUUID(), state: 'wa', taxAs: 'set_in_pieces', treatment: 'not_taxed' },
      ...{ owesOnMaterials: 'yes', fromOn: '2026-01-01', note: 'By their letter', ...fields },
    });

  test('is kept by day: a new row takes over, and what was kept stays', async () => {
    const { commissionId } = await agreedByProposal(gallery, { taxAs: 'set_in_pieces' });
    const taxOn = async (on: '2026-03-01' | '2026-05-04') =>
      (await readTotal(db(), commissionId, { on, roundBy: 'invoice' }))?.tax.taxCents;
    expect(await taxOn(agreedOn)).toBe(80_000n);
    expect(code(await keepTaxRule(on(gallery.clerk, agreedOn), aRule()))).toBe('not_allowed');
    expect(code(await keepTaxRule(owner(), aRule({ state: 'ID' })))).toBe('unknown_state');
    const rule = aRule();
    expect(done(await keepTaxRule(owner(), rule))).toEqual({ state: 'WA' });
    expect(done(await keepTaxRule(owner(), rule))).toEqual({ state: 'WA' });
    expect(code(await keepTaxRule(owner(), aRule()))).toBe('tax_rule_follows_already');
    expect(await taxOn(agreedOn)).toBe(0n);
    const looked = await findTaxLooked(gallery.owner, commissionId);
    expect(looked?.used).toContain('Not taxed as a sale');

    const next = { treatment: 'taxed', owesOnMaterials: 'no', fromOn: '2026-05-01' };
    done(await keepTaxRule(owner(), aRule(next)));
    expect(await taxOn('2026-03-01')).toBe(0n);
    expect(await taxOn(agreedOn)).toBe(80_000n);
    expect(await db().commissionTaxRule.count()).toBe(2);
  });

  test('never twice for one day, past all our checks', async () => {
    const fromOn = new Date('2026-02-01');
    const data = { state: 'WA', taxAs: 'fixture', treatment: 'taxed', fromOn } as const;
    const rule = await ruleMetBy(async (tx) => {
      await tx.commissionTaxRule.create({ data });
      await tx.commissionTaxRule.create({ data: { ...data, fromOn: new Date('2026-04-01') } });
    });
    expect(rule).toBe('one_commission_rule_at_a_time');
  });
});
