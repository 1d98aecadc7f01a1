import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { giveBackInput } from '@/lib/commissions/input/money';
import { findSettlement } from '@/lib/commissions/reads/money/settlement';
import { endCommission, type EndToWrite } from '@/lib/commissions/writes/end';
import { takePayment } from '@/lib/commissions/writes/money';
import { giveBack } from '@/lib/commissions/writes/money/refund';
import { settlementPdf } from '@/lib/documents/commissions/settlement';
import type { Day } from '@/lib/dates/rules';
import { getGallery } from '@/lib/platform/settings';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { readPaper } from '@/tests/helpers/paper-text';
import { aPayment, asked, done, on } from './a-commission';
import { allSteps, making } from './a-making';
import { agreedByProposal, agreedOn, changeOffered, code, signChange } from './an-agreement';

let gallery: OpenGallery;
const today: Day = '2026-05-06';
const later = '2026-05-20';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

type Ended = Partial<EndToWrite> & { paidCents?: bigint; steps?: number };

/** An agreement over 10,400.00 with a signed change, so far made and paid, that ends early. */
async function ended({ paidCents = 540_000n, steps, ...end }: Ended = {}) {
  const { commissionId } = await agreedByProposal(gallery);
  const change = await changeOffered(gallery, commissionId);
  done(await signChange(on(gallery.owner, agreedOn), change));
  const clerk = on(gallery.clerk, today);
  const { paymentId } = done(await takePayment(clerk, aPayment(commissionId, paidCents)));
  if (steps !== undefined) await making(gallery, commissionId, { day: today, steps });
  const why = 'The house was sold.';
  const said = { requestKey: randomUUID(), commissionId, why, endedOn: today, ...end };
  const result = await endCommission(on(gallery.owner, today), said);
  return { commissionId, paymentId, result };
}

async function paperOf(commissionId: string, paperSize: 'letter' | 'a4' = 'letter') {
  const told = await findSettlement(gallery.owner, commissionId);
  if (!told) throw new Error('What ended early has its settlement.');
  return readPaper(await settlementPdf(told, { ...(await getGallery()), paperSize }));
}

const fate = 'The finished parts are kept for stock.';

describe('the settlement of an early end says what stays and what goes back', () => {
  test('before the making the design fee stays', async () => {
    const { commissionId } = await ended();
    const [letter, a4] = [await paperOf(commissionId), await paperOf(commissionId, 'a4')];
    for (const words of [
      'ended on Wednesday 6 May 2026, before the making.',
      'Why: The house was sold.',
      'The agreement was signed by Marit Oland on Monday 4 May 2026.',
      'The price with its signed changes, before tax $10,400.00',
      'Paid until it ended, less what had gone back $5,400.00',
      'No job was opened; nothing was made.',
      'Written by Ines Vale',
    ]) {
      expect(letter.text).toContain(words);
    }
    expect(letter.text).toMatch(
      /Before the making the design fee of (\$[\d,.]+) stays\..*What stays \1 /,
    );
    expect([a4.text, letter.fontsInside, a4.fontsInside]).toEqual([letter.text, true, true]);
    expect([letter.width, Math.round(a4.width)]).toEqual([612, 595]);
  });
  test('while it is made the agreed share stays, and the pieces have a word', async () => {
    const { commissionId } = await ended({ steps: 3, fate });
    const { text } = await paperOf(commissionId);
    expect(text).toContain('while it was made.');
    expect(text).toContain('By the agreement $5,200.00');
    expect(text).toContain('What stays $5,200.00');
    expect(text).toContain('Of it kept $5,200.00 Still to go back $200.00');
    expect(text).toMatch(
      /Job \d+, 4 pieces: 4 at [a-z ]+\. The finished parts are kept for stock\./,
    );
  });
  test('once it is finished the whole stays, and what was not paid is still owed', async () => {
    const { commissionId } = await ended({ steps: allSteps, fate });
    const { text } = await paperOf(commissionId);
    expect(text).toContain('4 finished.');
    expect(text).toContain('What stays $10,400.00');
    expect(text).toContain('Of what stays not paid then $5,000.00 Still to be paid $5,000.00');
    const clerk = on(gallery.clerk, later);
    done(await takePayment(clerk, aPayment(commissionId, 300_000n, 'cheque')));
    expect((await paperOf(commissionId)).text).toContain(
      'Came in since $3,000.00 Still to be paid $2,000.00',
    );
  });
  test('another amount is said to be the gallery’s own; what went back since is told', async () => {
    const { commissionId, paymentId } = await ended({ ownFeeCents: 40_000n });
    const back = { requestKey: randomUUID(), commissionId, paymentId, amountCents: '5,000' };
    const form = { ...back, kind: 'card', reference: '', why: 'It ended.' };
    done(await giveBack(on(gallery.owner, later), giveBackInput.parse(form)));
    const { text } = await paperOf(commissionId);
    expect(text).toContain('The gallery settled on this amount instead');
    expect(text).toContain('To go back $5,000.00 Went back since $5,000.00 Still to go back $0.00');
  });
});

test('pieces that were begun are not left without a word', async () => {
  const { result } = await ended({ steps: 1 });
  expect(code(result)).toBe('pieces_need_a_fate');
  expect(code((await ended({ endedOn: agreedOn })).result)).toBe('end_before_payment');
});

test('what goes on has no settlement, and makers see none', async () => {
  const { commissionId } = await asked(gallery.maker, agreedOn);
  expect(await findSettlement(gallery.owner, commissionId)).toBeNull();
  await expect(findSettlement(gallery.maker, commissionId)).rejects.toThrow();
});
