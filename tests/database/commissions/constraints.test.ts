import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { approve } from '@/lib/commissions/writes/colours/approve';
import { letMakingBegin, openCommissionJob } from '@/lib/commissions/writes/making';
import { constraintOf } from '@/lib/platform/db/errors';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { moveJobOn } from '@/lib/studio/writes';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { aYes, agreed, asked, done, on, readyForClay, sketched, tiled } from './a-commission';

let gallery: OpenGallery;
let commissionId: string;
let jobId: string;
let sketch: Awaited<ReturnType<typeof sketched>>;
let unanswered: Awaited<ReturnType<typeof sketched>>;
const day = '2026-05-12';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  ({ commissionId } = await asked(gallery.maker, day));
  await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 500_000n });
  sketch = await sketched(gallery.maker, commissionId, day);
  done(await approve(on(gallery.maker, day), aYes(commissionId, 'sketch', sketch, day)));
  unanswered = await sketched(gallery.maker, commissionId, day);
  const job = {
    ...{ requestKey: randomUUID(), commissionId, pieces: 4, neededOn: null },
    technique: 'slip_cast' as const,
  };
  jobId = done(await openCommissionJob(on(gallery.maker, day), job)).id;
});

/** The name of the rule that the database answers with, past all of our own checks. */
async function ruleMetBy(work: (tx: Tx) => Promise<unknown>): Promise<string | null> {
  try {
    await inTransaction(async (tx) => {
      await work(tx);
      return ok(null);
    });
  } catch (error) {
    return constraintOf(error);
  }
  return 'nothing stood in the way';
}

const at = new Date('2026-05-12T23:00:00Z');
const move = () => ({ jobId, fromPosition: 0, toPosition: 1, pieces: 4, movedOn: at, at });
const yes = () => ({ commissionId, approvedBy: 'x', how: 'by_mail', approvedOn: at, at }) as const;

describe('the database itself says no, by name', () => {
  test.each<[string, string, (tx: Tx) => Promise<unknown>]>([
    [
      'clay before the yes and the deposit',
      'making_begins_after_the_yes',
      (tx) => tx.jobMove.create({ data: { ...move(), staffId: gallery.maker.id } }),
    ],
    [
      'a yes to other bytes than were shown',
      'Approval_sketchId_commissionId_contentSha256_fkey',
      (tx) =>
        tx.approval.create({
          data: {
            ...{ ...yes(), sketchId: unanswered.id, fileSha256: unanswered.fileSha256 },
            contentSha256: 'a'.repeat(64),
            recordedById: gallery.maker.id,
          },
        }),
    ],
    [
      'a yes to nothing',
      'approval_is_of_one_thing',
      (tx) =>
        tx.approval.create({
          data: {
            ...{ ...yes(), fileSha256: sketch.fileSha256, contentSha256: sketch.fileSha256 },
            recordedById: gallery.maker.id,
          },
        }),
    ],
    [
      'a changed yes',
      'never_changed',
      (tx) => tx.approval.updateMany({ where: { commissionId }, data: { approvedBy: 'Y' } }),
    ],
    ['a lost yes', 'never_changed', (tx) => tx.approval.deleteMany({ where: { commissionId } })],
    [
      'another picture under an old letter',
      'never_changed',
      (tx) => tx.sketch.updateMany({ where: { commissionId }, data: { note: 'x' } }),
    ],
    [
      'a changed agreement',
      'never_changed',
      (tx) => tx.agreement.updateMany({ where: { commissionId }, data: { priceCents: 1n } }),
    ],
    [
      'an end without a reason',
      'ending_says_why',
      (tx) =>
        tx.commissionEnding.create({
          data: { commissionId, why: ' ', endedOn: at, at, staffId: gallery.owner.id },
        }),
    ],
    [
      'an owner’s word without a reason',
      'start_override_says_why',
      (tx) =>
        tx.startOverride.create({
          data: { commissionId, why: '', at, staffId: gallery.owner.id },
        }),
    ],
    [
      'a budget that goes down',
      'commission_budget_goes_up',
      (tx) =>
        tx.commission.update({
          where: { id: commissionId },
          data: { budgetFromCents: 2n, budgetToCents: 1n },
        }),
    ],
  ])('%s', async (_label, rule, work) => {
    expect(await ruleMetBy(work)).toBe(rule);
  });
});

test('the studio is told what is missing before the clay, and begins once it is all there', async () => {
  const first = { requestKey: randomUUID(), jobId, fromPosition: 0, pieces: 4 };
  const early = await moveJobOn(on(gallery.maker, day), first);
  expect(early).toMatchObject({
    ok: false,
    refusal: { code: 'making_not_yet', missing: ['colours', 'deposit'] },
  });
  const ready = await readyForClay(gallery, day);
  const then = { ...first, requestKey: randomUUID(), jobId: ready.job.id };
  expect(done(await moveJobOn(on(gallery.maker, day), then)).pieces).toBe(4);
});

test('clay without an agreement is refused, even when sketch and colours have their yes', async () => {
  const other = await asked(gallery.maker, day);
  const pencil = await sketched(gallery.maker, other.commissionId, day, 60);
  const tile = await tiled(gallery.maker, other.commissionId, day, 210);
  const maker = on(gallery.maker, day);
  done(await approve(maker, aYes(other.commissionId, 'sketch', pencil, day)));
  done(await approve(maker, aYes(other.commissionId, 'colour_tile', tile, day)));
  const rule = await ruleMetBy(async (tx) => {
    const job = await tx.job.create({
      data: {
        ...{ title: 'Herons', technique: 'thrown', pieces: 4, wanted: 4, openedAt: at },
        ...{ commissionId: other.commissionId, openedById: gallery.maker.id },
      },
    });
    await tx.jobMove.create({ data: { ...move(), jobId: job.id, staffId: gallery.maker.id } });
  });
  expect(rule).toBe('making_begins_after_the_yes');
});

test('the owner’s word opens the clay, and its reason is kept', async () => {
  const tile = await tiled(gallery.maker, commissionId, day);
  done(await approve(on(gallery.maker, day), aYes(commissionId, 'colour_tile', tile, day)));
  const word = { requestKey: randomUUID(), commissionId, why: 'The shop opens in June.' };
  done(await letMakingBegin(on(gallery.owner, day), word));
  const moving = { requestKey: randomUUID(), jobId, fromPosition: 0, pieces: 4 };
  expect(done(await moveJobOn(on(gallery.maker, day), moving)).pieces).toBe(4);
});
