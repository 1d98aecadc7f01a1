import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { agreementForCollector } from '@/lib/commissions/reads/agreement/agreements';
import { sha256Of } from '@/lib/commissions/reads/content';
import { agree } from '@/lib/commissions/writes/agreement';
import { signAgreement } from '@/lib/commissions/writes/agreement/sign';
import { approve } from '@/lib/commissions/writes/colours/approve';
import { openCommissionJob } from '@/lib/commissions/writes/making';
import { takePayment } from '@/lib/commissions/writes/money';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { ruleMetBy } from '@/tests/database/sales/rule-met';
import { startAfresh } from '@/tests/helpers/database';
import { aPayment, aYes, asked, dayAt, done, on, sketched, tiled } from './a-commission';
import {
  accept,
  agreedByProposal,
  agreedOn,
  atPage,
  code,
  proposed,
  readyToSign,
  toSign,
} from './an-agreement';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

/** What was written of a commission's agreement. */
async function written(commissionId: string) {
  const where = { commissionId };
  return {
    agreements: await db().agreement.count({ where }),
    signatures: await db().signature.count({ where }),
  };
}

/** A line drawn on white, as the pad sends it. */
async function aDrawing(): Promise<string> {
  const create = { width: 72, height: 32, channels: 3 as const, background: '#ffffff' };
  const bytes = await sharp({ create }).png().toBuffer();
  return `data:image/png;base64,${bytes.toString('base64')}`;
}

describe('signing an agreement', () => {
  test('keeps its words, lines and plan, bound to a name', async () => {
    const { commissionId } = await agreedByProposal(gallery);
    const kept = await agreementForCollector(commissionId);
    expect(kept).toMatchObject({
      ...{ priceCents: 1_000_000n, depositCents: 540_000n, signedWhere: 'gallery' },
      ...{ clayFromOn: null, taxAs: 'goods_hung' },
      signature: { name: 'Marit Oland', kind: 'typed', isOnTheirPage: false },
    });
    expect(kept?.contentSha256).toBe(sha256Of(kept?.body ?? ''));
    expect(kept?.lines.reduce((sum, line) => sum + line.amountCents, 0n)).toBe(1_000_000n);
    expect(kept?.steps.reduce((sum, step) => sum + step.amountCents, 0n)).toBe(1_080_000n);
  });

  test('refuses in this order, and leaves nothing', async () => {
    const { commissionId } = await asked(gallery.maker, agreedOn);
    const owner = on(gallery.owner, agreedOn);
    const early = await toSign(commissionId, agreedOn);
    expect(code(await signAgreement(on(gallery.clerk, agreedOn), early))).toBe('not_allowed');
    const scribble = { ...early, signedAs: 'drawn' as const, drawing: '' };
    expect(code(await signAgreement(owner, scribble))).toBe('drawing_not_kept');
    const nowhere = { ...early, commissionId: randomUUID() };
    expect(code(await signAgreement(owner, nowhere))).toBe('unknown_commission');
    expect(code(await signAgreement(owner, early))).toBe('no_accepted_proposal');
    const proposalId = await proposed(gallery, commissionId);
    const unanswered = await toSign(commissionId, agreedOn);
    expect(code(await signAgreement(owner, unanswered))).toBe('no_accepted_proposal');
    done(await accept(gallery, { commissionId, proposalId, day: agreedOn }));
    const other = { ...(await toSign(commissionId, agreedOn)), contentSha256: 'b'.repeat(64) };
    expect(code(await signAgreement(owner, other))).toBe('paper_changed');
    expect(await written(commissionId)).toEqual({ agreements: 0, signatures: 0 });
  });

  test('a proposal that ran out unanswered is no ground; one accepted in time stays one', async () => {
    const { commissionId } = await asked(gallery.maker, agreedOn);
    const proposalId = await proposed(gallery, commissionId);
    const late = '2026-06-04';
    const answered = await accept(gallery, { commissionId, proposalId, day: late });
    expect(code(answered)).toBe('proposal_ran_out');
    const form = await toSign(commissionId, late);
    expect(code(await signAgreement(on(gallery.owner, late), form))).toBe('no_accepted_proposal');

    const inTime = await readyToSign(gallery);
    const signing = await toSign(inTime.commissionId, late);
    expect(code(await signAgreement(on(gallery.owner, late), signing))).toBe('done');
  });

  test('what is approved after the paper was looked at makes it another paper', async () => {
    const { commissionId } = await readyToSign(gallery);
    const form = await toSign(commissionId, agreedOn);
    const sketch = await sketched(gallery.maker, commissionId, agreedOn);
    const yes = aYes(commissionId, 'sketch', sketch, agreedOn);
    done(await approve(on(gallery.maker, agreedOn), yes));
    const owner = on(gallery.owner, agreedOn);
    expect(code(await signAgreement(owner, form))).toBe('paper_changed');
    expect(code(await signAgreement(owner, await toSign(commissionId, agreedOn)))).toBe('done');
    const kept = await agreementForCollector(commissionId);
    expect(kept?.body).toContain(sketch.contentSha256);
  });

  test('two at the same moment: one is kept, and a second agreement is refused ever after', async () => {
    const { commissionId } = await readyToSign(gallery);
    const owner = on(gallery.owner, agreedOn);
    const both = await Promise.all([
      signAgreement(owner, await toSign(commissionId, agreedOn)),
      signAgreement(owner, await toSign(commissionId, agreedOn, { signedAs: 'on_paper' })),
    ]);
    expect(both.map(code).sort()).toEqual(['agreed_already', 'done']);
    expect(await written(commissionId)).toEqual({ agreements: 1, signatures: 1 });
    const again = await signAgreement(owner, await toSign(commissionId, agreedOn));
    expect(code(again)).toBe('agreed_already');
  });

  test('the same form sent twice is kept once', async () => {
    const { commissionId } = await readyToSign(gallery);
    const form = await toSign(commissionId, agreedOn, {
      ...{ signedAs: 'drawn', drawing: await aDrawing() },
    });
    const owner = on(gallery.owner, agreedOn);
    const once = done(await signAgreement(owner, form));
    expect(done(await signAgreement(owner, form))).toEqual(once);
    expect(await written(commissionId)).toEqual({ agreements: 1, signatures: 1 });
    const kept = await agreementForCollector(commissionId);
    expect(kept?.signature).toMatchObject({ kind: 'drawn', fileId: expect.any(String) as string });
  });

  test('on their own page it is signed by the link, wherever the form says; another’s page cannot', async () => {
    const { commissionId } = await readyToSign(gallery);
    const other = await readyToSign(gallery);
    const page = await atPage(gallery, commissionId);
    const theirs = await toSign(other.commissionId, agreedOn);
    expect(code(await signAgreement(page, theirs))).toBe('unknown_commission');
    const form = await toSign(commissionId, agreedOn, { signedWhere: 'at_their_home' });
    expect(done(await signAgreement(page, form))).toMatchObject({ clayFromOn: null });
    expect(await agreementForCollector(commissionId)).toMatchObject({
      signedWhere: 'on_their_page',
      signature: { isOnTheirPage: true },
    });
  });
});

/** A commission signed at the collector's home on a Monday, with everything else there. */
async function signedAtHome(): Promise<string> {
  const { commissionId } = await readyToSign(gallery);
  const form = await toSign(commissionId, agreedOn, { signedWhere: 'at_their_home' });
  const signed = done(await signAgreement(on(gallery.owner, agreedOn), form));
  // 16 CFR Part 429: three business days after Monday 4 May 2026 end on Thursday; clay on Friday.
  expect(signed.clayFromOn).toBe('2026-05-08');
  const maker = on(gallery.maker, agreedOn);
  const sketch = await sketched(gallery.maker, commissionId, agreedOn);
  const tile = await tiled(gallery.maker, commissionId, agreedOn);
  done(await approve(maker, aYes(commissionId, 'sketch', sketch, agreedOn)));
  done(await approve(maker, aYes(commissionId, 'colour_tile', tile, agreedOn)));
  done(await takePayment(on(gallery.owner, agreedOn), aPayment(commissionId, 540_000n)));
  return commissionId;
}

describe('the days in which it can be cancelled', () => {
  test('hold the clay back, in the database too, until the day after the third business day', async () => {
    const commissionId = await signedAtHome();
    const { id: jobId } = done(
      await openCommissionJob(on(gallery.maker, agreedOn), {
        ...{ requestKey: randomUUID(), commissionId, pieces: 60, neededOn: null },
        technique: 'slab_relief',
      }),
    );
    const move = (day: '2026-05-07' | '2026-05-08') =>
      ruleMetBy((tx) =>
        tx.jobMove.create({
          data: {
            ...{ jobId, fromPosition: 0, toPosition: 1, pieces: 1, staffId: gallery.maker.id },
            ...{ movedOn: new Date(day), at: dayAt(day) },
          },
        }),
      );
    expect(await move('2026-05-07')).toBe('making_begins_after_the_yes');
    expect(await move('2026-05-08')).toBe('nothing stood in the way');
  });
});

describe('an agreement on a paper of its own', () => {
  const handshake = (commissionId: string) => ({
    ...{ requestKey: randomUUID(), commissionId, taxPlaceId: gallery.taxPlaceId },
    ...({ priceCents: 500_000n, promisedOn: null, agreedOn, agreedBy: 'Marit Oland' } as const),
    deposit: { as: 'percent', percent: '50' } as const,
  });

  test('signed at their home waits as the other does; elsewhere it does not', async () => {
    const owner = on(gallery.owner, '2026-05-06');
    const one = await asked(gallery.maker, agreedOn);
    const atHome = { ...handshake(one.commissionId), signedWhere: 'at_their_home' as const };
    done(await agree(owner, { ...atHome, cancelNotice: true }));
    expect(await agreementForCollector(one.commissionId)).toMatchObject({
      ...{ clayFromOn: '2026-05-08', signedWhere: 'at_their_home', cancelNotice: true },
    });
    const other = await asked(gallery.maker, agreedOn);
    done(await agree(owner, { ...handshake(other.commissionId), signedWhere: 'gallery' }));
    expect(await agreementForCollector(other.commissionId)).toMatchObject({
      ...{ clayFromOn: null, signedWhere: 'gallery', cancelNotice: false },
    });
  });

  test('is taxed as the state says of what becomes part of a building', async () => {
    const owner = on(gallery.owner, agreedOn);
    await db().commissionTaxRule.create({
      data: {
        ...{ state: 'WA', taxAs: 'set_in_pieces', treatment: 'not_taxed' },
        fromOn: new Date('2026-01-01'),
      },
    });
    const { commissionId } = await asked(gallery.maker, agreedOn);
    const built = { ...handshake(commissionId), taxAs: 'set_in_pieces' as const };
    expect(done(await agree(owner, built))).toMatchObject({ depositCents: '250000' });
    expect(await agreementForCollector(commissionId)).toMatchObject({ taxAs: 'set_in_pieces' });
    const hung = await asked(gallery.maker, agreedOn);
    expect(done(await agree(owner, handshake(hung.commissionId)))).toMatchObject({
      depositCents: '270000',
    });
  });

  test('is the only agreement: none is signed beside it', async () => {
    const { commissionId } = await readyToSign(gallery);
    const form = await toSign(commissionId, agreedOn);
    const owner = on(gallery.owner, agreedOn);
    done(await agree(owner, handshake(commissionId)));
    expect(code(await signAgreement(owner, form))).toBe('agreed_already');
    expect(code(await agree(owner, handshake(commissionId)))).toBe('agreed_already');
  });
});
