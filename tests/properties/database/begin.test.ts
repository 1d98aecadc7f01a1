import { fc, test } from '@fast-check/vitest';
import { beforeAll, expect } from 'vitest';
import { mayBegin } from '@/lib/commissions/rules/facts';
import { addAgreement } from '@/lib/commissions/writes/agreement';
import { findForWriting } from '@/lib/commissions/writes/carry-out';
import { addEnd } from '@/lib/commissions/writes/end';
import { addWordToBegin } from '@/lib/commissions/writes/making';
import { addPayment } from '@/lib/commissions/writes/money';
import { readyPicture, type ReadyPicture } from '@/lib/files/ready';
import { addApproval } from '@/lib/commissions/writes/colours/approve';
import { addColourTile, addSketch } from '@/lib/commissions/writes/colours/show';
import type { Doer } from '@/lib/access/rules';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { aPicture, aYes, asked, done, on } from '@/tests/database/commissions/a-commission';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';

const day = '2026-05-12';
let gallery: OpenGallery;
let picture: ReadyPicture;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  picture = done(await readyPicture(await aPicture(90)));
});

const step = fc.record({
  kind: fc.constantFrom('agree', 'sketch', 'tile', 'pay', 'pay', 'sketch', 'tile', 'word', 'end'),
  hundreds: fc.bigInt({ min: 0n, max: 4n }),
});
type Step = { kind: string; hundreds: bigint };

/** Does one thing; a refusal is an answer like any other here. */
async function take(tx: Tx, doer: Doer, commissionId: string, { kind, hundreds }: Step) {
  const why = 'The shop opens in June.';
  const deposit = { as: 'amount', amountCents: hundreds * 10_000n } as const;
  const { taxPlaceId } = gallery;
  const agreement = { commissionId, priceCents: 50_000n, deposit, taxPlaceId, agreedBy: 'Marit' };
  const money = { kind: 'card' as const, reference: '', paidBy: 'Marit', instalmentId: null };
  switch (kind) {
    case 'agree':
      return addAgreement(tx, doer, { ...agreement, promisedOn: null, agreedOn: day });
    case 'sketch': {
      const sketch = { commissionId, picture, note: '', shownOn: day } as const;
      const shown = await addSketch(tx, doer, sketch);
      return shown.ok && hundreds > 0n
        ? addApproval(tx, doer, aYes(commissionId, 'sketch', shown.value, day))
        : shown;
    }
    case 'tile': {
      const tile = { commissionId, picture, glazes: 'celadon', shownOn: day } as const;
      const shown = await addColourTile(tx, doer, tile);
      return shown.ok && hundreds > 0n
        ? addApproval(tx, doer, aYes(commissionId, 'colour_tile', shown.value, day))
        : shown;
    }
    case 'pay':
      return addPayment(tx, doer, {
        ...money,
        commissionId,
        amountCents: hundreds * 10_000n + 1n,
      });
    case 'word':
      return addWordToBegin(tx, doer, { commissionId, why });
    default:
      return addEnd(tx, doer, { commissionId, why, endedOn: day });
  }
}

async function bothSay(tx: Tx, doer: Doer, commissionId: string) {
  const rows = await tx.$queryRaw<{ may: boolean }[]>`
    SELECT making_may_begin(${commissionId}::uuid, ${day}::date) AS may`;
  const { facts } = done(await findForWriting(tx, doer, commissionId));
  return { database: rows[0]?.may, rule: mayBegin(facts, day).may };
}

test.prop([fc.array(step, { minLength: 3, maxLength: 9 })], { numRuns: 25 })(
  'the database and the rule agree whether the making may begin, whatever happened before',
  async (steps: readonly Step[]) => {
    const { commissionId } = await asked(gallery.maker, day);
    const doer = on(gallery.owner, day);
    await inTransaction(
      async (tx) => {
        for (const each of steps) {
          await take(tx, doer, commissionId, each);
          const said = await bothSay(tx, doer, commissionId);
          expect(said.database, JSON.stringify(each.kind)).toBe(said.rule);
        }
        return ok(null);
      },
      { timeoutMs: 60_000 },
    );
  },
  120_000,
);
